package understudy.cli;

import java.io.BufferedReader;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import org.jline.terminal.Terminal;
import understudy.cli.terminal.Surroundings;
import understudy.store.Store;
import understudy.store.UserFolders;

/** Runs commands in this process, with a user's folders, keyboard and screen of the test's own. */
final class Run {

    private final Path home;
    private String typed = "";
    private boolean terminal;
    private Map<String, String> env = Map.of("TERM", "xterm", "NO_COLOR", "1");
    private Charset charset = StandardCharsets.UTF_8;
    private Surroundings.Terminals terminals = () -> {
        throw new AssertionError("nobody should open a terminal here");
    };

    /** What a command left behind. */
    record Outcome(int exitCode, String out, String err) {}

    private Run(Path home) {
        this.home = home;
    }

    static Run in(Path home) {
        return new Run(home);
    }

    /** A person sits there, and types these lines when asked. */
    Run atTerminal(String lines) {
        typed = lines;
        terminal = true;
        return this;
    }

    /** Nobody sits there, but these lines come in. */
    Run piping(String lines) {
        typed = lines;
        return this;
    }

    Run withTerminal(Terminal opened) {
        terminals = () -> opened;
        return this;
    }

    Run withTerminals(Surroundings.Terminals other) {
        terminals = other;
        return this;
    }

    Run withEnv(Map<String, String> other) {
        env = other;
        return this;
    }

    Run inAscii() {
        charset = StandardCharsets.US_ASCII;
        return this;
    }

    UserFolders folders() {
        return new UserFolders(Map.of(), "Linux", home);
    }

    /** What this user keeps. */
    Store store() {
        return Store.open(folders().data().resolve("understudy.db"));
    }

    Outcome understudy(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Surroundings surroundings = surroundings(new PrintWriter(out), new PrintWriter(err));
        int exitCode = Main.run(surroundings, args);
        return new Outcome(exitCode, out.toString(), err.toString());
    }

    Surroundings surroundings(PrintWriter out, PrintWriter err) {
        return new Surroundings(out, err, new BufferedReader(new StringReader(typed)), charset, env, folders(), Clock.fixed(Instant.parse("2026-03-01T12:00:00Z"), ZoneOffset.UTC), terminal, terminals);
    }
}
