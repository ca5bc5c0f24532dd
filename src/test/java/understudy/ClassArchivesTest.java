package understudy;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The archives of classes serve what is really started: asked of the real Java, by the real launcher, with the real jar. */
@Tag("packaged")
class ClassArchivesTest {

    private static final Path JAR = Path.of("target/understudy.jar");
    /** What is not in an archive is made while it runs: proxies of annotations, classes of lambdas. */
    private static final double LEAST_SHARE = 0.9;

    @TempDir
    private Path temp;

    /** Of the classes that one run loads, the share that comes from an archive. */
    private record Loaded(int archived, int all) {

        static Loaded in(Path log) throws IOException {
            List<String> lines = Files.readAllLines(log);
            return new Loaded((int) lines.stream().filter(line -> line.contains("source: shared objects file")).count(), lines.size());
        }

        double share() {
            return (double) archived / all;
        }
    }

    /** A jar in another place is another jar to Java; the launcher sees that, and makes the archives anew. */
    @Test
    void inACheckoutThatWasMovedNineOfTenClassesComeFromTheArchiveOfTheCollectorInUse() throws Exception {
        Path project = checkout();
        Path ready = project.resolve("target/launcher");
        Files.writeString(ready.resolve("java"), System.getProperty("java.home") + "/bin/java " + temp.resolve("elsewhere/understudy.jar") + "\n");
        for (String archive : List.of("classes.jsa", "playing-classes.jsa")) {
            Files.writeString(ready.resolve(archive), "of the jar that was elsewhere");
        }
        for (String[] command : new String[][] {
            {"--version"}, {"patterns"}, {"rig", "list"}, {"render", "sine", "--for", "10 ms", "--out", temp.resolve("s.wav").toString()},
            {"play", "crank-60-2-hall", "--for", "0.2 s", "--to", "silent"}, {"trace", "fieldhand-4-speedometer", "--to", "silent"}}) {
            Loaded loaded = run(project, command);
            assertThat(loaded.all()).as(String.join(" ", command)).isGreaterThan(500);
            assertThat(loaded.share()).as("%s: %s", String.join(" ", command), loaded).isGreaterThanOrEqualTo(LEAST_SHARE);
        }
    }

    /** The launcher with a jar that is newer than all it is made of. */
    private Path checkout() throws IOException {
        Path project = temp.resolve("checkout");
        for (String folder : List.of("scripts", "src/main", "patterns", "target/launcher")) {
            Files.createDirectories(project.resolve(folder));
        }
        Files.writeString(project.resolve("pom.xml"), "<project/>");
        for (String script : List.of("understudy", "class-archives")) {
            Files.copy(Path.of("scripts", script), project.resolve("scripts").resolve(script));
        }
        Files.copy(JAR, project.resolve("target/launcher/understudy.jar"));
        return project;
    }

    private Loaded run(Path project, String... words) throws Exception {
        Path home = Files.createDirectories(temp.resolve("home"));
        Path log = temp.resolve("classes.log");
        Files.deleteIfExists(log);
        List<String> command = new ArrayList<>(List.of(project.resolve("scripts/understudy").toString()));
        command.addAll(List.of(words));
        Path said = temp.resolve("said");
        ProcessBuilder process = new ProcessBuilder(command).redirectInput(new File("/dev/null")).redirectErrorStream(true).redirectOutput(said.toFile());
        // not from the command line, whose own -Xlog:disable comes later than all but these
        process.environment().putAll(Map.of("JAVA_HOME", System.getProperty("java.home"), "_JAVA_OPTIONS", "-Xlog:class+load:file=" + log,
                "XDG_CONFIG_HOME", home.toString(), "XDG_DATA_HOME", home.toString(), "XDG_STATE_HOME", home.toString()));
        assertThat(process.start().waitFor()).as(() -> text(said)).isZero();
        assertThat(text(said)).as("an archive could be made").doesNotContain("starts slowly");
        return Loaded.in(log);
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            return e.toString();
        }
    }
}
