package understudy.guide;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The guide's files in the jar. */
final class Resource {

    private static final String FOLDER = "/guide/";

    private Resource() {}

    static String text(String name) {
        try (InputStream file = Resource.class.getResourceAsStream(FOLDER + name)) {
            if (file == null) {
                throw new IllegalStateException("the guide's own file " + name + " is missing");
            }
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
