package understudy.cli.terminal;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;

/** Shows how far a long piece of work is: nothing in its first second, then one line that is rewritten, or in a log a line now and then. */
public final class Progress implements AutoCloseable {

    private static final Duration QUIET = Duration.ofSeconds(1);
    private static final Duration ON_A_TERMINAL = Duration.ofMillis(200);
    private static final Duration IN_A_LOG = Duration.ofSeconds(10);

    private final Surroundings surroundings;
    private final Clock clock;
    private final String what;
    private final Duration every;
    private Instant next;
    private boolean shown;

    public Progress(Surroundings surroundings, String what) {
        this.surroundings = surroundings;
        this.clock = surroundings.clock();
        this.what = what;
        this.every = surroundings.terminal() ? ON_A_TERMINAL : IN_A_LOG;
        this.next = clock.instant().plus(surroundings.terminal() ? QUIET : IN_A_LOG);
    }

    /** @param part of the work that is done, 0 to 1 */
    public void at(double part) {
        Instant now = clock.instant();
        if (now.isBefore(next)) {
            return;
        }
        next = now.plus(every);
        String line = what + ": " + (int) (part * 100) + " %";
        if (surroundings.terminal()) {
            surroundings.err().print("\r" + line);
            surroundings.err().flush();
            shown = true;
        } else {
            surroundings.err().println(line);
        }
    }

    /** Wipes the line. */
    @Override
    public void close() {
        if (shown) {
            surroundings.err().print("\r" + " ".repeat(what.length() + 8) + "\r");
            surroundings.err().flush();
        }
    }
}
