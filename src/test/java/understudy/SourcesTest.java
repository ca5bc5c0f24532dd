package understudy;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What can be read off the files themselves. */
class SourcesTest {

    private static final int MOST_LINES = 300;

    /** A type's name in backquotes, with or without its package, a member behind it or not. */
    private static final Pattern NAMED_TYPE = Pattern.compile("`(?:understudy\\.[a-z]+\\.)?([A-Z][a-z]\\w*)[^`]*`");

    @Test
    void noFileIsTooLongToReadInOneGo() throws IOException {
        for (Path source : sources()) {
            assertThat(Files.readAllLines(source)).as(source.toString()).hasSizeLessThan(MOST_LINES);
        }
    }

    @Test
    void everyTypeThatTheDevelopersGuideNamesExists() throws IOException {
        Set<String> types = sources().stream()
                .map(source -> source.getFileName().toString().replace(".java", ""))
                .collect(Collectors.toSet());
        List<String> named = NAMED_TYPE.matcher(Files.readString(Path.of("DEVELOPERS.md"))).results()
                .map(MatchResult::group).toList();
        assertThat(named).isNotEmpty();
        assertThat(named.stream().map(name -> NAMED_TYPE.matcher(name).replaceAll("$1"))
                .filter(type -> !types.contains(type) && !isOfJava(type))).isEmpty();
    }

    private static boolean isOfJava(String type) {
        try {
            Class.forName("java.lang." + type);
            return true;
        } catch (ClassNotFoundException e) {
            return false;
        }
    }

    private static List<Path> sources() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("src"))) {
            List<Path> sources = files.filter(file -> file.toString().endsWith(".java")).sorted().toList();
            assertThat(sources).isNotEmpty();
            return sources;
        }
    }
}
