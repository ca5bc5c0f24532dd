package understudy.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Pattern files that tests write for themselves, so that they don't hang on the numbers of the shipped ones. */
public final class Samples {

    /** Four positions, one missing: edges at 0, 45, 90, 135, 180 and 225 degrees. */
    public static final String WHEEL = """
            title: Test wheel 4-1
            purpose: Shows a wheel that can be counted by hand.
            source: Made up.
            speed: {default: 600 rpm, from: 60 rpm, to: 6000 rpm}
            outputs:
              - name: crank
                wheel: {teeth: 4, missing: 1}
                hall: {low: -1.2 V, high: 1.2 V}
            """;

    private Samples() {}

    static Path write(Path folder, String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }
}
