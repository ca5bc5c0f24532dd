package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Handouts are files like any other of the user's; what is kept is private. */
class FileModesTest {

    @TempDir
    private Path home;

    private void fine(String... words) {
        Run.Outcome outcome = Run.in(home).understudy(words);
        assertThat(outcome.exitCode()).as(outcome.err()).isZero();
    }

    @Test
    void handoutsHaveTheUsualModeAndTheStoreIsPrivate() throws IOException {
        Set<PosixFilePermission> usual = Files.getPosixFilePermissions(Files.writeString(home.resolve("any"), ""));
        Path folder = Files.createDirectory(home.resolve("out"));
        fine("jobs", "import", "patterns/circuits/sample/fieldhand.json");
        fine("report", "fieldhand-sample", "--to", folder.resolve("a.html").toString());
        fine("report", "fieldhand-sample", "--to", folder.resolve("a.pdf").toString());
        fine("jobs", "export", "fieldhand-sample", "--to", folder.resolve("a.json").toString());
        fine("guide", "--html", folder.resolve("guide").toString());
        fine("show", "sine", "--plot", folder.resolve("a.png").toString());
        fine("show", "sine", "--plot", folder.resolve("a.svg").toString());
        try (Stream<Path> files = Files.walk(folder)) {
            assertThat(files.filter(Files::isRegularFile)).hasSizeGreaterThan(8)
                    .allSatisfy(file -> assertThat(Files.getPosixFilePermissions(file)).as(file.toString()).isEqualTo(usual));
        }
        Path data = Run.in(home).folders().data();
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(data))).isEqualTo("rwx------");
        try (Stream<Path> files = Files.list(data)) {
            assertThat(files).isNotEmpty().allSatisfy(file ->
                    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file))).isEqualTo("rw-------"));
        }
    }
}
