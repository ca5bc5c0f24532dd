package understudy.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.snakeyaml.engine.v2.api.Load;

class PatternLibraryTest {
    private static final PatternLibrary LIBRARY = PatternLibrary.open();

    private static String refused(String idOrPath) {
        return LIBRARY.find(idOrPath).problems().get(0).toString();
    }

    @Test
    void everyFileOfTheFolderIsListedAndFound() {
        assertThat(LIBRARY.ids()).isEqualTo(Corpus.files(Corpus.SHIPPED).stream().map(Corpus::name).toList());
        for (String id : LIBRARY.ids()) {
            assertThat(LIBRARY.find(id).value().orElseThrow().id()).isEqualTo(id);
        }
    }

    @Test
    void anUnknownNameSuggestsTheNearest() {
        assertThat(refused("crank-36-1vr"))
                .isEqualTo("crank-36-1vr: there is no pattern of this name; did you mean crank-36-1-vr or crank-60-2-vr?");
        assertThat(refused("knock")).isEqualTo("knock: there is no pattern of this name; "
                + "did you mean knock-86mm? (a file of your own is named with its ending, like my-wheel.yaml)");
        assertThat(refused("zzz")).startsWith("zzz: there is no pattern of this name; shipped are crank-36-1-cam-1-hall, ");
        assertThat(refused("")).startsWith("there is no pattern of this name; shipped are ");
    }

    @Test
    void filesAreFoundByPath(@TempDir Path folder) throws IOException {
        Path own = folder.resolve("my-wheel.yaml");
        Files.copy(Corpus.SHIPPED.resolve("sine.yaml"), own);
        assertThat(LIBRARY.find(own.toString()).value().orElseThrow().id()).isEqualTo("my-wheel");
        assertThat(refused(folder.resolve("none.yaml").toString())).isEqualTo(folder.resolve("none.yaml")
                + ":1:1: there is no such file; look at how its name and folder are spelled");
        assertThat(refused(folder + "/")).isEqualTo(folder + "/:1:1: this is a folder; name a file in it");
        Files.writeString(own, "title: x\n");
        assertThat(refused(own.toString())).startsWith(own + ":1:1: a pattern needs \"purpose\"");
    }

    /** The classes and patterns packed into a jar at an awkward path, loaded away from this test's own classes. */
    @Test
    void aCopiedJarKnowsItsPatterns(@TempDir Path folder) throws Exception {
        Path jar = Files.createDirectories(folder.resolve("my tools 100% ü")).resolve("under study+.jar");
        try (OutputStream out = Files.newOutputStream(jar); JarOutputStream entries = new JarOutputStream(out);
                Stream<Path> files = Files.walk(Path.of("target/classes"))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                entries.putNextEntry(new JarEntry(Path.of("target/classes").relativize(file).toString().replace('\\', '/')));
                entries.write(Files.readAllBytes(file));
                entries.closeEntry();
            }
        }
        URL yaml = Load.class.getProtectionDomain().getCodeSource().getLocation();
        URL[] path = {jar.toUri().toURL(), yaml};
        for (int i = 0; i < 2; i++) { // a second time in one process: nothing may stay open
            try (URLClassLoader loader = new URLClassLoader(path, ClassLoader.getPlatformClassLoader())) {
                Class<?> library = loader.loadClass(PatternLibrary.class.getName());
                assertThat(library.getProtectionDomain().getCodeSource().getLocation()).isEqualTo(path[0]);
                Object opened = library.getMethod("open").invoke(null);
                assertThat(library.getMethod("ids").invoke(opened)).isEqualTo(LIBRARY.ids());
                Object result = library.getMethod("find", String.class).invoke(opened, "sine");
                assertThat(result.getClass().getMethod("problems").invoke(result)).isEqualTo(List.of());
            }
        }
    }
}
