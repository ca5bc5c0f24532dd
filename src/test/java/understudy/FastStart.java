package understudy;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.sqlite.JDBC;
import org.sqlite.util.LibraryLoaderUtil;

/**
 * Starts a main class of the tests' class path again and again in processes of its own, with its classes in an archive: a process
 * that lives for a moment would else spend most of it on loading them. An archive takes jars only, so folders are packed first.
 */
public final class FastStart {

    private static final String JAVA = Path.of(System.getProperty("java.home"), "bin", "java").toString();

    private final List<String> command;

    private FastStart(List<String> command) {
        this.command = List.copyOf(command);
    }

    /**
     * Packs and trains.
     *
     * @param folder   keeps jars and archive
     * @param training arguments of a run that ends by itself; nothing is typed, and what it keeps is not the user's
     */
    public static FastStart of(Class<?> main, Path folder, String... training) throws Exception {
        List<String> jars = new ArrayList<>();
        for (String part : System.getProperty("java.class.path").split(File.pathSeparator)) {
            jars.add(Files.isDirectory(Path.of(part)) ? pack(Path.of(part), folder.resolve("part-" + jars.size() + ".jar")).toString() : part);
        }
        // a short life is not worth more than the first compiler
        List<String> flags = List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xlog:disable",
                "-Dslf4j.provider=org.slf4j.helpers.NOP_FallbackServiceProvider", "-Dslf4j.internal.verbosity=ERROR",
                // once for all, since the killed can't tidy up
                "-Dorg.sqlite.lib.path=" + database(folder), "-Dorg.sqlite.lib.name=" + LibraryLoaderUtil.getNativeLibName());
        Path archive = folder.resolve("classes.jsa");
        List<String> trained = command(flags, "-XX:ArchiveClassesAtExit=" + archive, jars, main);
        trained.addAll(List.of(training));
        ProcessBuilder process = new ProcessBuilder(trained).redirectOutput(ProcessBuilder.Redirect.DISCARD).redirectInput(new File("/dev/null"));
        process.environment().put("XDG_DATA_HOME", folder.resolve("data").toString());
        assertThat(process.start().waitFor()).isZero();
        assertThat(archive).exists();
        return new FastStart(command(flags, "-XX:SharedArchiveFile=" + archive, jars, main));
    }

    private static List<String> command(List<String> flags, String archive, List<String> jars, Class<?> main) {
        List<String> command = new ArrayList<>(List.of(JAVA));
        command.addAll(flags);
        command.addAll(List.of(archive, "-cp", String.join(File.pathSeparator, jars), main.getName()));
        return command;
    }

    /** The folder with the database's own library, which would else be unpacked at every start. */
    private static Path database(Path folder) throws IOException {
        String name = LibraryLoaderUtil.getNativeLibName();
        try (InputStream packed = JDBC.class.getResourceAsStream(LibraryLoaderUtil.getNativeLibResourcePath() + "/" + name)) {
            Files.copy(packed, folder.resolve(name));
        }
        return folder;
    }

    private static Path pack(Path folder, Path jar) throws IOException {
        try (OutputStream out = Files.newOutputStream(jar); ZipOutputStream zip = new ZipOutputStream(out); Stream<Path> files = Files.walk(folder)) {
            zip.setLevel(0);
            files.filter(Files::isRegularFile).forEach(file -> {
                try {
                    zip.putNextEntry(new ZipEntry(folder.relativize(file).toString().replace(File.separatorChar, '/')));
                    Files.copy(file, zip);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        }
        return jar;
    }

    /** One more process, not started yet. */
    public ProcessBuilder with(String... args) {
        List<String> whole = new ArrayList<>(command);
        whole.addAll(List.of(args));
        return new ProcessBuilder(whole);
    }
}
