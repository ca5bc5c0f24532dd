package understudy;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * When {@code scripts/understudy} builds, what it says, and what it starts; in a copy of the project's skeleton, with
 * a Maven that notes that it was called and a Java that prints its arguments.
 */
class LaunchScriptTest {

    private static final String BUILDS = "building understudy, once; this takes a minute or two...\n";

    @TempDir
    private Path temp;

    private Path project;
    private Path tools;

    private record Outcome(int exitCode, String out, String err) {}

    @BeforeEach
    void layOut() throws IOException {
        project = temp.resolve("a folder with spaces");
        tools = temp.resolve("tools");
        Files.createDirectories(project.resolve("scripts"));
        Files.createDirectories(project.resolve("src/main/java"));
        Files.createDirectories(project.resolve("patterns"));
        Files.writeString(project.resolve("pom.xml"), "<project/>");
        Files.copy(Path.of("scripts/understudy"), project.resolve("scripts/understudy"));
        project.resolve("scripts/understudy").toFile().setExecutable(true);
        Files.createDirectories(tools);
        for (String tool : List.of("sh", "dirname", "readlink", "sed", "head", "find", "mkdir", "mktemp", "cp", "rm", "mv", "touch", "cat", "sleep")) {
            Path real = Stream.of("/bin", "/usr/bin").map(Path::of)
                    .map(bin -> bin.resolve(tool)).filter(Files::exists).findFirst().orElseThrow();
            tool(tool, "exec " + real + " \"$@\"");
        }
        tool("javac", "");
        tool("java", "[ \"$1\" = -version ] && { echo 'openjdk version \"17.0.9\" 2023-10-17' >&2; exit 0; }\n"
                + "printf '%s\\n' \"$@\"\nexit 7");
        tool("mvn", "echo built >>\"" + temp.resolve("builds") + "\"\nwhile [ \"$1\" != -f ]; do shift; done\n"
                + "sleep 0.3\nfolder=$(dirname \"$2\")\nmkdir \"$folder/target\"\necho jar >\"$folder/target/understudy.jar\"");
    }

    @Test
    void buildsOnceAndPassesArgumentsAndExitCodeOn() throws Exception {
        Outcome first = start(project.resolve("scripts/understudy"), "render", "a b", "--out=x");
        assertThat(first.err()).isEqualTo(BUILDS);
        assertThat(first.out().lines()).containsExactly(
                "-XX:+UseSerialGC", "-XX:SharedArchiveFile=" + project + "/target/launcher/classes.jsa", "-Xlog:disable",
                "-Xlog:all=error:stderr", "-jar", project + "/target/launcher/understudy.jar", "render", "a b", "--out=x");
        assertThat(first.exitCode()).isEqualTo(7);
        Outcome second = start(project.resolve("scripts/understudy"), "render", "a b", "--out=x");
        assertThat(second).isEqualTo(new Outcome(7, first.out(), ""));
        assertThat(builds()).isEqualTo(1);
        try (Stream<Path> left = Files.list(project.resolve("target/launcher"))) {
            assertThat(left.map(file -> file.getFileName().toString())).containsExactlyInAnyOrder("understudy.jar", "java");
        }
    }

    @Test
    void whatPlaysGetsTheCollectorThatDoesNotPause() throws Exception {
        for (String command : List.of("play", "trace", "sweep", "panel")) {
            Outcome play = start(project.resolve("scripts/understudy"), command, "sine");
            assertThat(play.out()).as(command).startsWith("-XX:+UseZGC\n-Xms256m\n-Xmx256m\n-XX:+AlwaysPreTouch\n");
        }
    }

    @Test
    void worksThroughLinksFromAnywhere() throws Exception {
        Path bin = Files.createDirectories(temp.resolve("my bin"));
        Files.createSymbolicLink(bin.resolve("relative"), bin.relativize(project.resolve("scripts/understudy")));
        Files.createSymbolicLink(bin.resolve("link to a link"), Path.of("relative"));
        assertThat(start(bin.resolve("link to a link")).out()).contains(project + "/target/launcher/understudy.jar\n");
    }

    @Test
    void buildsAgainWhenAnythingItIsMadeOfIsNewer() throws Exception {
        Path script = project.resolve("scripts/understudy");
        start(script);
        int expected = 1;
        for (String part : List.of("pom.xml", "src/main/java/New.java", "patterns/new.yaml")) {
            Path file = project.resolve(part);
            Files.writeString(file, "new");
            Files.setLastModifiedTime(file, FileTime.from(Instant.now().plusSeconds(2)));
            assertThat(start(script).err()).as(part).isEqualTo(BUILDS);
            assertThat(builds()).isEqualTo(++expected);
            Files.setLastModifiedTime(file, FileTime.from(Instant.now().minusSeconds(60)));
        }
        Files.delete(project.resolve("patterns/new.yaml"));
        Files.setLastModifiedTime(project.resolve("patterns"), FileTime.from(Instant.now().plusSeconds(2)));
        assertThat(start(script).err()).as("a file that is gone").isEqualTo(BUILDS);
    }

    /** An archive holds the place of the jar: it is made once, and again where the checkout stands somewhere else. */
    @Test
    void archivesAreMadeOnceAndAgainInACheckoutThatWasMoved() throws Exception {
        Path archives = project.resolve("scripts/class-archives");
        Files.writeString(archives, "#!/bin/sh\necho \"$2\" >>\"" + temp.resolve("archives") + "\"\n");
        assertThat(archives.toFile().setExecutable(true)).isTrue();
        start(project.resolve("scripts/understudy"));
        start(project.resolve("scripts/understudy"));
        Path moved = temp.resolve("elsewhere");
        Files.move(project, moved);
        start(moved.resolve("scripts/understudy"));
        start(moved.resolve("scripts/understudy"));
        assertThat(Files.readAllLines(temp.resolve("archives"))).containsExactly(
                project + "/target/launcher/understudy.jar", moved + "/target/launcher/understudy.jar");
    }

    @Test
    void twoStartsAtOnceBothRun() throws Exception {
        List<Process> starts = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            starts.add(process(project.resolve("scripts/understudy"), "patterns").start());
        }
        for (Process start : starts) {
            assertThat(start.waitFor()).isEqualTo(7);
        }
        assertThat(Files.readString(project.resolve("target/launcher/understudy.jar"))).isEqualTo("jar\n");
    }

    @Test
    void aBuildThatFailsShowsWhyAndLeavesTheOldJar() throws Exception {
        start(project.resolve("scripts/understudy"));
        tool("mvn", "echo 'this is why'\nexit 1");
        Files.setLastModifiedTime(project.resolve("pom.xml"), FileTime.from(Instant.now().plusSeconds(2)));
        Outcome failed = start(project.resolve("scripts/understudy"));
        assertThat(failed).isEqualTo(new Outcome(1, "", BUILDS + "this is why\nunderstudy could not be built; the reason is above\n"));
        assertThat(Files.readString(project.resolve("target/launcher/understudy.jar"))).isEqualTo("jar\n");
        try (Stream<Path> left = Files.list(project.resolve("target/launcher"))) {
            assertThat(left).as("no half-built leftovers").hasSize(2);
        }
    }

    @Test
    void oneLineSaysWhatToInstall() throws Exception {
        String needsJdk = "understudy needs a JDK, version 17 or later: install one (Debian, Ubuntu: apt-get install openjdk-17-jdk-headless)";
        Path script = project.resolve("scripts/understudy");
        tool("java", "echo 'openjdk version \"11.0.2\" 2019-01-15' >&2");
        assertThat(start(script)).isEqualTo(new Outcome(1, "", needsJdk + "; " + tools.resolve("java") + " is version 11.0.2\n"));
        tool("java", "echo 'java version \"1.8.0_292\"' >&2");
        assertThat(start(script).err()).isEqualTo(needsJdk + "; " + tools.resolve("java") + " is version 1.8.0_292\n");
        Files.delete(tools.resolve("java"));
        assertThat(start(script)).isEqualTo(new Outcome(1, "", needsJdk + "\n"));
        tool("java", "echo 'openjdk version \"17.0.9\" 2023-10-17' >&2");
        Files.delete(tools.resolve("javac"));
        assertThat(start(script)).as("a Java that can run but not build").isEqualTo(new Outcome(1, "", needsJdk + "\n"));
        tool("javac", "");
        Files.delete(tools.resolve("mvn"));
        assertThat(start(script)).isEqualTo(new Outcome(1, "",
                "understudy needs Maven to build itself: install it (Debian, Ubuntu: apt-get install maven)\n"));
    }

    private int builds() throws IOException {
        return Files.readAllLines(temp.resolve("builds")).size();
    }

    private Outcome start(Path script, String... args) throws Exception {
        Path out = temp.resolve("out");
        Path err = temp.resolve("err");
        int exitCode = process(script, args).redirectOutput(out.toFile()).redirectError(err.toFile()).start().waitFor();
        return new Outcome(exitCode, Files.readString(out), Files.readString(err));
    }

    private ProcessBuilder process(Path script, String... args) {
        List<String> command = new ArrayList<>(List.of(script.toString()));
        command.addAll(List.of(args));
        ProcessBuilder process = new ProcessBuilder(command).directory(temp.toFile());
        process.environment().clear();
        process.environment().put("PATH", tools.toString());
        return process;
    }

    private void tool(String name, String body) throws IOException {
        Path file = tools.resolve(name);
        Files.write(file, ("#!/bin/sh\n" + body + "\n").getBytes(StandardCharsets.UTF_8));
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
    }
}
