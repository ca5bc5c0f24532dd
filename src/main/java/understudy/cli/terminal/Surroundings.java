package understudy.cli.terminal;

import java.io.BufferedReader;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;
import understudy.store.KeptScale;
import understudy.store.NamedRig;
import understudy.store.Store;
import understudy.store.UserFolders;
import understudy.text.Paragraph;
import understudy.text.Times;

/**
 * All that a run touches outside itself; tests hand in their own.
 *
 * @param out       results
 * @param err       problems and progress
 * @param in        lines that the user types
 * @param charset   that {@code out} is written in
 * @param env       environment variables
 * @param folders   the user's own
 * @param clock     the time of day
 * @param terminal  whether a person sits at both ends, so that one can ask and colour
 * @param terminals opens that person's terminal to read single keys
 */
public record Surroundings(
        PrintWriter out,
        PrintWriter err,
        BufferedReader in,
        Charset charset,
        Map<String, String> env,
        UserFolders folders,
        Clock clock,
        boolean terminal,
        Terminals terminals) {

    /** Opens the terminal; whoever does closes it again. */
    public interface Terminals {
        Terminal open() throws IOException;
    }

    public static Surroundings ofThisProcess() {
        Charset charset = charsetOfOutput();
        Map<String, String> env = System.getenv();
        return new Surroundings(
                new PrintWriter(new FileOutputStream(FileDescriptor.out), true, charset),
                new PrintWriter(new FileOutputStream(FileDescriptor.err), true, charset),
                new BufferedReader(new InputStreamReader(System.in, charset)),
                charset,
                env,
                new UserFolders(env, System.getProperty("os.name"), Path.of(System.getProperty("user.home"))),
                Clock.systemDefaultZone(),
                System.console() != null,
                () -> TerminalBuilder.builder().system(true).nativeSignals(false).build());
    }

    /** Characters of a line of the terminal, as the launcher found them; the usual number where there is none. */
    public int columns() {
        String columns = env.getOrDefault("UNDERSTUDY_COLUMNS", "");
        return columns.matches("[1-9]\\d{0,3}") ? Integer.parseInt(columns) : Paragraph.USUAL_WIDTH;
    }

    /** Times as they are shown here. */
    public Times times() {
        return new Times(clock.getZone());
    }

    /** What the user keeps; whoever opens it closes it. */
    public Store store() {
        return Store.open(storeFile());
    }

    /** A rig that the user keeps. */
    public NamedRig rig(String name) {
        try (Store store = store()) {
            return store.rigs().find(name);
        }
    }

    /** Whether the user keeps anything yet. */
    public boolean keepsAnything() {
        return Files.exists(storeFile());
    }

    /** The scale that was learned of a circuit on a vehicle; looking for it makes no store. */
    public KeptScale scale(Optional<String> vehicle, String circuitId) {
        if (!keepsAnything()) {
            return new KeptScale(vehicle, circuitId, Optional.empty());
        }
        try (Store store = store()) {
            return KeptScale.find(vehicle, circuitId, store);
        }
    }

    private Path storeFile() {
        return folders.data().resolve("understudy.db");
    }

    /** Colours only for a person, and not for one who set NO_COLOR to anything (no-color.org). */
    public boolean colour() {
        return rewritesLines() && env.getOrDefault("NO_COLOR", "").isEmpty();
    }

    /** Whether a line can be written again in place, and keys arrive one by one. */
    public boolean rewritesLines() {
        return terminal && !"dumb".equals(env.get("TERM"));
    }

    /** Whether the terminal's character set has braille; whether its font has is beyond knowing. */
    public boolean braille() {
        return charset.newEncoder().canEncode('\u28ff');
    }

    private static Charset charsetOfOutput() {
        // by its name: Java 19 and later, Java 17 at a terminal, any Java
        for (String property : new String[] {"stdout.encoding", "sun.stdout.encoding", "native.encoding"}) {
            String name = System.getProperty(property);
            if (name != null && Charset.isSupported(name)) {
                return Charset.forName(name);
            }
        }
        return Charset.defaultCharset();
    }
}
