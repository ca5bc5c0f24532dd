package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import understudy.cli.terminal.Progress;
import understudy.cli.terminal.Surroundings;

class ProgressTest {

    private final StringWriter err = new StringWriter();
    private long nowMillis;

    @Test
    void onATerminalALineIsRewrittenAfterTheFirstSecondAndWipedAtTheEnd() {
        try (Progress progress = new Progress(surroundings(Run.in(Path.of("")).atTerminal("")), "writing x.wav")) {
            at(progress, 999, 0.1);
            at(progress, 1000, 0.25);
            at(progress, 1100, 0.26);
            at(progress, 1200, 0.5);
        }
        assertThat(err.toString()).isEqualTo("\rwriting x.wav: 25 %\rwriting x.wav: 50 %\r                     \r");
    }

    @Test
    void inALogALineComesEveryTenSeconds() {
        try (Progress progress = new Progress(surroundings(Run.in(Path.of(""))), "writing x.wav")) {
            at(progress, 9_999, 0.1);
            at(progress, 10_000, 0.25);
            at(progress, 15_000, 0.3);
            at(progress, 20_000, 0.999);
        }
        assertThat(err.toString().lines()).containsExactly("writing x.wav: 25 %", "writing x.wav: 99 %");
    }

    @Test
    void quickWorkSaysNothing() {
        try (Progress progress = new Progress(surroundings(Run.in(Path.of("")).atTerminal("")), "writing x.wav")) {
            at(progress, 500, 1);
        }
        assertThat(err.toString()).isEmpty();
    }

    private void at(Progress progress, long millis, double part) {
        nowMillis = millis;
        progress.at(part);
    }

    private Surroundings surroundings(Run run) {
        Surroundings base = run.surroundings(new PrintWriter(err), new PrintWriter(err));
        Clock clock = new Clock() {
            @Override
            public Instant instant() {
                return Instant.ofEpochMilli(nowMillis);
            }

            @Override
            public ZoneOffset getZone() {
                return ZoneOffset.UTC;
            }

            @Override
            public Clock withZone(ZoneId zone) {
                return this;
            }
        };
        return new Surroundings(base.out(), base.err(), base.in(), base.charset(), base.env(), base.folders(), clock,
                base.terminal(), base.terminals());
    }
}
