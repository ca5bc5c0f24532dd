package understudy.cli;

import java.io.IOException;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import understudy.audio.PlayerEnd;
import understudy.audio.PlayerReport;
import understudy.audio.PlayerSettings;
import understudy.bench.Clearance;
import understudy.bench.Playback;
import understudy.bench.SignalPlan;
import understudy.reading.Expected;
import understudy.trace.Answer;
import understudy.wave.Hand;

/** Leads through a sweep: goes to each speed without a gap in the signal, and waits for what is displayed there. */
final class SweepSession {

    private static final long TICK_MILLIS = 20;
    private static final List<String> HELP = List.of(
            "  47 or 29 mph     the number that the display shows",
            "  nothing          it shows nothing",
            "  erratic          it jumps about",
            "  Enter            skips this speed",
            "  back             the last speed once more; what was typed there is forgotten",
            "  stop             ends the sweep here; silence, then the table",
            "  ?                these words");

    private final TraceTalk talk;
    private final SweepLog log;
    private final Swept swept;
    private final SteadySignal signal;
    private final Clearance clearance;
    private final List<SweepStep> steps;
    private final Clock clock;
    private boolean stopped;

    SweepSession(TraceTalk talk, SweepLog log, Swept swept, SteadySignal signal, Clearance clearance,
            List<SweepStep> steps, Clock clock) {
        this.talk = talk;
        this.log = log;
        this.swept = swept;
        this.signal = signal;
        this.clearance = clearance;
        this.steps = steps;
        this.clock = clock;
    }

    /**
     * Returns in silence, when all was read or the user stopped.
     *
     * @throws TraceTalk.Left at the end of the input, and after an interrupt
     */
    void run() {
        talk.gap();
        talk.say("At each speed, wait until the display stands still, then type what it shows. Enter skips; back, stop and ?"
                + " go at any time.");
        while (!done()) {
            PlayerReport report = play();
            if (!done()) {
                String reason = report.end() instanceof PlayerEnd.Lost lost ? lost.reason() : "playing ended";
                talk.say("The signal is gone: " + reason + ".");
                stopped = talk.answer("Press Enter to play again, or type stop: ", () -> false).orElseThrow()
                        .equalsIgnoreCase("stop");
            }
        }
    }

    private boolean done() {
        return stopped || log.rows().size() == steps.size();
    }

    private SweepStep next() {
        return steps.get(log.rows().size());
    }

    private PlayerReport play() {
        SweepStep.Leg first = next().legs().get(0);
        double startHz = Double.isNaN(first.fromHz()) ? first.toHz() : first.fromHz();
        SignalPlan plan = signal.plan().startingAt(startHz);
        AtomicReference<Hand> hand = plan.hand();
        hand.set(hand.get().withSpeedHz(startHz));
        try (Playback playback = Playback.open(plan, hand, signal.destination(), PlayerSettings.DEFAULT, clearance)) {
            talk.silenceBy(playback::stop);
            playback.start();
            through(playback, hand);
            PlayerReport report = playback.end();
            playback.shortage().map(CommandWords::text).ifPresent(talk::say);
            return report;
        } finally {
            talk.silenceBy(() -> {});
        }
    }

    private static IllegalStateException interrupted() {
        Thread.currentThread().interrupt();
        return new IllegalStateException("nobody interrupts this thread");
    }

    /** Until all was read, the user stopped, or the signal is gone. */
    private void through(Playback playback, AtomicReference<Hand> hand) {
        BooleanSupplier over = playback::isOver;
        while (!done() && !over.getAsBoolean()) {
            SweepStep step = next();
            Expected expected = swept.expected(step.speedHz()).orElseThrow();
            int gaps = playback.status().underruns();
            talk.gap();
            talk.say("Step " + (log.rows().size() + 1) + " of " + steps.size() + ": " + swept.words(step.speedHz())
                    + "; expected: " + expected);
            step.legs().forEach(leg -> travel(leg, hand, over));
            pause(step.dwellSeconds(), over);
            read(step, expected, hand, over);
            if (playback.status().underruns() > gaps) {
                talk.say("Mind: the signal itself had a gap just now. If the display faltered then, type back.");
            }
        }
    }

    /** In steps of the hand so short that the renderer, which evens each out, goes on without a kink. */
    private static void travel(SweepStep.Leg leg, AtomicReference<Hand> hand, BooleanSupplier over) {
        double startHz = hand.get().speedHz();
        boolean there = startHz == leg.toHz() && (Double.isNaN(leg.fromHz()) || leg.fromHz() == startHz);
        long begun = System.nanoTime();
        double part = there || leg.seconds() == 0 ? 1 : 0;
        while (part < 1 && !over.getAsBoolean()) {
            hand.set(hand.get().withSpeedHz(leg.at(part, startHz)));
            pause(TICK_MILLIS / 1e3, over);
            part = (System.nanoTime() - begun) / 1e9 / leg.seconds();
        }
        hand.set(hand.get().withSpeedHz(leg.toHz()));
    }

    private static void pause(double seconds, BooleanSupplier over) {
        long until = System.nanoTime() + Math.round(seconds * 1e9);
        try {
            while (System.nanoTime() < until && !over.getAsBoolean()) {
                Thread.sleep(Math.max(1, Math.min(TICK_MILLIS, (until - System.nanoTime()) / 1_000_000)));
            }
        } catch (InterruptedException e) {
            throw interrupted();
        }
    }

    private void read(SweepStep step, Expected expected, AtomicReference<Hand> hand, BooleanSupplier over) {
        Optional<String> line = talk.answer("Displayed, in " + expected.unit().symbol() + ": ", over);
        while (line.isPresent() && !understood(line.get(), step, expected, hand, over)) {
            line = talk.answer("Displayed, in " + expected.unit().symbol() + ": ", over);
        }
    }

    /** False when it has to be asked again. */
    private boolean understood(String line, SweepStep step, Expected expected, AtomicReference<Hand> hand, BooleanSupplier over) {
        String word = line.toLowerCase(Locale.ROOT);
        switch (word) {
            case "" -> {
                return keep(step, expected, Optional.empty());
            }
            case "back" -> {
                return back(hand, over);
            }
            case "stop", "quit", "exit" -> {
                stopped = true;
                return true;
            }
            case "?", "help" -> {
                talk.lines(HELP);
                return false;
            }
            default -> {
                Optional<Answer> answer = word(word).or(() -> ShownNumber.read(line, expected, "nothing, erratic, back, stop",
                        talk::say, question -> talk.answer(question, over)));
                return answer.isPresent() && keep(step, expected, answer);
            }
        }
    }

    private static Optional<Answer> word(String word) {
        return Optional.ofNullable(TraceAnswer.WORDS.get(word)).filter(kind -> kind != Answer.Kind.COMES_AND_GOES).map(Answer::of);
    }

    private boolean back(AtomicReference<Hand> hand, BooleanSupplier over) {
        int count = log.rows().size();
        if (count == 0) {
            talk.say("This is the first speed.");
            return false;
        }
        if (written(log::removeLast) && count > 1) {
            // so that it is reached from where it was reached before: a display that lags shows another number from above
            travel(new SweepStep.Leg(Double.NaN, steps.get(count - 2).speedHz(), next().legs().get(0).seconds(), false), hand, over);
        }
        return true;
    }

    private boolean keep(SweepStep step, Expected expected, Optional<Answer> seen) {
        SweepRow row = new SweepRow(clock.instant(), step.speedHz(), swept.frequencyHz(step.speedHz()), expected, seen);
        if (written(() -> log.add(row)) && seen.isPresent()) {
            talk.say(row.right() ? "Right." : (row.tells() ? "Not right: " : "This can't tell: ") + row.reason() + ".");
        }
        return true;
    }

    private interface Writing {
        void write() throws IOException;
    }

    /** Tries until it is on the disk; the signal goes on meanwhile. */
    private boolean written(Writing writing) {
        while (true) {
            try {
                writing.write();
                return true;
            } catch (IOException e) {
                talk.say(log.file() + " can't be written: " + WholeFile.reason(e) + ". What was typed before is kept. Mend that,"
                        + " then press Enter to try again; or type stop.");
                if (talk.answer("Enter or stop: ", () -> false).orElseThrow().equalsIgnoreCase("stop")) {
                    stopped = true;
                    return false;
                }
            }
        }
    }
}
