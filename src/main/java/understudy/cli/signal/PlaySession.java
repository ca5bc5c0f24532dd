package understudy.cli.signal;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jline.terminal.Attributes;
import org.jline.terminal.Terminal;
import org.jline.utils.Signals;
import understudy.audio.PlayerReport;
import understudy.bench.LiveHand;
import understudy.bench.Playback;
import understudy.bench.SpeedEntry;
import understudy.cli.terminal.Keys;
import understudy.cli.terminal.Surroundings;
import understudy.refusal.Refused;
import understudy.text.Paragraph;
import understudy.view.StatusLine;

/** The time while it plays: takes keys, shows how it stands, and sees to it that every way out fades out first. */
final class PlaySession {

    private static final String[] STOP_SIGNALS = {"INT", "TERM", "HUP"};
    private static final long LOOK_MILLIS = 100;
    private static final Duration LOG_EVERY = Duration.ofSeconds(5);
    private static final String WIPE_TO_END = "\033[K";

    private final Surroundings surroundings;
    private final Playback playback;
    private final LiveHand hand;
    private final StatusLine status;
    private final SpeedEntry entry;

    PlaySession(Surroundings surroundings, Playback playback, LiveHand hand, StatusLine status) {
        this.surroundings = surroundings;
        this.playback = playback;
        this.hand = hand;
        this.status = status;
        this.entry = new SpeedEntry(hand, status.speedUnit());
    }

    /** Plays to the end; the end is silent whatever happens. */
    PlayerReport run() {
        for (String signal : STOP_SIGNALS) {
            Signals.register(signal, playback::stop);
        }
        try (playback) {
            return surroundings.rewritesLines() ? withKeys() : withoutKeys();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("nobody interrupts this thread", e);
        } catch (IOException e) {
            throw Refused.setup("the terminal can't be used: " + e.getMessage(), "", e);
        } finally {
            for (String signal : STOP_SIGNALS) {
                Signals.registerDefault(signal);
            }
        }
    }

    private PlayerReport withKeys() throws IOException, InterruptedException {
        keys().forEach(surroundings.out()::println);
        surroundings.out().flush();
        try (Terminal terminal = surroundings.terminals().open()) {
            Attributes before = terminal.enterRawMode();
            // the key that would freeze the program in the middle of a signal is switched off
            Attributes raw = terminal.getAttributes();
            raw.setControlChar(Attributes.ControlChar.VSUSP, 0);
            terminal.setAttributes(raw);
            try {
                // everything that a first drawing loads is loaded before the signal needs the machine
                show(terminal);
                playback.start();
                return takeKeys(terminal);
            } finally {
                terminal.writer().println();
                terminal.setAttributes(before);
                terminal.flush();
            }
        }
    }

    private PlayerReport takeKeys(Terminal terminal) throws IOException, InterruptedException {
        Keys keys = new Keys(terminal.reader());
        boolean playing = true;
        while (true) {
            if (playing) {
                int key = keys.read(LOOK_MILLIS);
                playing = key == Keys.NONE || press(key);
                if (!playing) {
                    playback.stop();
                }
            }
            show(terminal);
            Optional<PlayerReport> report = playback.awaitEnd(Duration.ofMillis(playing ? 0 : LOOK_MILLIS));
            if (report.isPresent()) {
                return report.get();
            }
        }
    }

    /** Carries out one key; false when it asks to stop. */
    private boolean press(int key) {
        if (entry.isOpen() && key != Keys.END_OF_INPUT) {
            entry.press(key);
            return true;
        }
        entry.forgetRefusal();
        double nowHz = playback.speedHz();
        switch (key) {
            case 's', 'S' -> entry.open();
            case Keys.UP -> hand.faster(nowHz, false);
            case Keys.DOWN -> hand.slower(nowHz, false);
            case Keys.RIGHT -> hand.faster(nowHz, true);
            case Keys.LEFT -> hand.slower(nowHz, true);
            case '+', '=' -> hand.louder();
            case '-', '_' -> hand.quieter();
            case ' ', 'q', 'Q', Keys.END_OF_INPUT -> {
                return false;
            }
            default -> {
                if (key >= '1' && key <= '9') {
                    hand.toggleFault(key - '1');
                }
            }
        }
        return true;
    }

    private void show(Terminal terminal) {
        String line = entry.line().orElseGet(() -> status.text(playback.speedHz(), hand.now(), playback.status()));
        // a full last column would wrap, and the next rewriting would start one line too low
        int room = terminal.getWidth() > 1 ? terminal.getWidth() - 1 : Paragraph.width() - 1;
        terminal.writer().print("\r" + line.substring(0, Math.min(line.length(), room)) + WIPE_TO_END);
        terminal.flush();
    }

    private PlayerReport withoutKeys() throws InterruptedException {
        playback.start();
        Optional<PlayerReport> report = playback.awaitEnd(LOG_EVERY);
        while (report.isEmpty()) {
            surroundings.out().println(Math.round(playback.status().secondsPlayed()) + " s: "
                    + status.text(playback.speedHz(), hand.now(), playback.status()));
            if (surroundings.out().checkError()) {
                // nobody reads any more: whoever looked after this is gone
                playback.stop();
            }
            report = playback.awaitEnd(LOG_EVERY);
        }
        return report.get();
    }

    /** What the keys do, and which number switches which fault. */
    private List<String> keys() {
        List<String> lines = new ArrayList<>();
        lines.add("up, down: speed   right, left: speed a little   s: type a speed   +, -: level   space: stop");
        if (!hand.pattern().faults().isEmpty()) {
            lines.add("faults: " + IntStream.range(0, Math.min(9, hand.pattern().faults().size()))
                    .mapToObj(i -> (i + 1) + " " + hand.pattern().faults().get(i).place().name())
                    .collect(Collectors.joining(", ")));
        }
        return lines;
    }
}
