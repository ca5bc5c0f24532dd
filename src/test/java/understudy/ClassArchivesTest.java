package understudy;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.jar.Attributes;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The archives that the launcher makes are really used, by the real Java, with the collector of each kind of command. */
class ClassArchivesTest {

    private static final String JAVA = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    /** What must come from an archive, at least; the rest is made while it runs. */
    private static final double LEAST_PART = 0.90;

    @TempDir
    private Path folder;

    @Test
    void nearlyAllClassesComeFromThem() throws Exception {
        Path jar = folder.resolve("understudy.jar");
        pack(jar);
        Path home = Files.createDirectory(folder.resolve("home"));
        ProcessBuilder making = new ProcessBuilder("scripts/class-archives", JAVA, jar.toString(), folder.toString()).inheritIO();
        making.environment().put("HOME", home.toString());
        assertThat(making.start().waitFor()).isZero();
        try (Stream<Path> left = Files.list(home)) {
            assertThat(left).as("nothing of the user's is touched").isEmpty();
        }
        String[] shortLived = {"-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-XX:SharedArchiveFile=" + folder.resolve("classes.jsa")};
        assertThat(part(jar, shortLived, "--version")).isGreaterThan(LEAST_PART);
        assertThat(part(jar, shortLived, "patterns")).isGreaterThan(LEAST_PART);
        assertThat(part(jar, shortLived, "rig", "list")).isGreaterThan(LEAST_PART);
        String[] rendering = {"-XX:+UseSerialGC", "-XX:SharedArchiveFile=" + folder.resolve("classes.jsa")};
        assertThat(part(jar, rendering, "render", "sine", "--for", "0.1 s", "--out", folder.resolve("s.wav").toString())).isGreaterThan(LEAST_PART);
        String[] playing = {"-XX:+UseZGC", "-Xms256m", "-Xmx256m", "-XX:SharedArchiveFile=" + folder.resolve("playing-classes.jsa")};
        assertThat(part(jar, playing, "play", "wheel-speed-44-vr", "--for", "0.1 s", "--to", "silent", "--yes")).isGreaterThan(LEAST_PART);
        assertThat(part(jar, playing, "trace", "fieldhand-4-speedometer", "--to", "silent")).isGreaterThan(LEAST_PART);
    }

    /** The part of the loaded classes that Java says it took from an archive. */
    private double part(Path jar, String[] flags, String... args) throws Exception {
        Path log = folder.resolve("loaded");
        List<String> command = new ArrayList<>(List.of(JAVA, "-Duser.home=" + folder.resolve("home"), "-Xlog:class+load:file=" + log));
        command.addAll(Arrays.asList(flags));
        command.addAll(List.of("-jar", jar.toString()));
        command.addAll(List.of(args));
        Process run = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
        run.getOutputStream().close();
        assertThat(run.waitFor()).isZero();
        List<String> loaded = Files.readAllLines(log).stream().filter(line -> line.contains(" source: ")).toList();
        assertThat(loaded).hasSizeGreaterThan(500);
        return (double) loaded.stream().filter(line -> line.contains("source: shared objects file")).count() / loaded.size();
    }

    /** What the tests run, as one jar that names the others: beside it, since an archive knows no other place. */
    private static void pack(Path jar) throws IOException {
        List<String> names = new ArrayList<>();
        for (String part : System.getProperty("java.class.path").split(File.pathSeparator)) {
            if (part.endsWith(".jar")) {
                names.add(names.size() + ".jar");
                Files.createSymbolicLink(jar.resolveSibling(names.get(names.size() - 1)), Path.of(part).toAbsolutePath());
            }
        }
        Manifest manifest = new Manifest();
        manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
        manifest.getMainAttributes().put(Attributes.Name.MAIN_CLASS, "understudy.cli.Main");
        manifest.getMainAttributes().put(Attributes.Name.CLASS_PATH, String.join(" ", names));
        Path classes = Path.of("target/classes");
        try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar), manifest); Stream<Path> files = Files.walk(classes)) {
            files.filter(Files::isRegularFile).forEach(file -> {
                try {
                    out.putNextEntry(new JarEntry(classes.relativize(file).toString().replace(File.separatorChar, '/')));
                    Files.copy(file, out);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        }
    }
}
