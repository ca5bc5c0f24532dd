package understudy.cli;

import java.io.IOException;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import understudy.audio.PlayerEnd;
import understudy.audio.PlayerReport;
import understudy.audio.PlayerSettings;
import understudy.bench.Clearance;
import understudy.bench.Playback;
import understudy.bench.SignalPlan;
import understudy.motion.Travel;
import understudy.pattern.Profile;
import understudy.reading.Expected;
import understudy.sweep.SweepRow;
import understudy.sweep.SweepStop;
import understudy.sweep.SweepTable;
import understudy.sweep.SweptCircuit;
import understudy.text.WholeFile;
import understudy.trace.Answer;
import understudy.wave.Hand;

/** Leads through a sweep: goes to each speed without a gap in the signal, and waits for what is displayed there. */
final class SweepDialogue {

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
    private final SweepTable log;
    private final SweptCircuit swept;
    private final SteadySignal signal;
    private final Clearance clearance;
    private final List<SweepStop> steps;
    private final Clock clock;
    private boolean stopped;

    SweepDialogue(TraceTalk talk, SweepTable log, SweptCircuit swept, SteadySignal signal, Clearance clearance,
            List<SweepStop> steps, Clock clock) {
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

    private SweepStop next() {
        return steps.get(log.rows().size());
    }

    private PlayerReport play() {
        double startHz = startHz(next().way().get(0));
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
                while (!done() && !playback.isOver()) {
            SweepStop step = next();
            Expected expected = swept.expected(step.speedHz()).orElseThrow();
            int gaps = playback.status().underruns();
            talk.gap();
            talk.say("Step " + (log.rows().size() + 1) + " of " + steps.size() + ": " + swept.words(step.speedHz())
                    + "; expected: " + expected);
            travel(step.way(), step.speedHz(), hand, playback);
            playedTo(playback.framesUntil(step.dwellSeconds()), playback);
            read(step, expected, hand, playback);
            if (playback.status().underruns() > gaps) {
                talk.say("Mind: the signal itself had a gap just now. If the display faltered then, type back.");
            }
        }
    }

    private static double startHz(Profile.Step step) {
        double toHz = step instanceof Profile.Sweep sweep ? sweep.toHz() : ((Profile.Ramp) step).toHz();
        return Double.isNaN(fromHz(step)) ? toHz : fromHz(step);
    }

    private static double seconds(Profile.Step step) {
        return step instanceof Profile.Sweep sweep ? sweep.seconds() : ((Profile.Ramp) step).seconds();
    }

    private static double fromHz(Profile.Step step) {
        return step instanceof Profile.Sweep sweep ? sweep.fromHz() : ((Profile.Ramp) step).fromHz();
    }

    /** There along these steps, from frame to frame; returns when the last of them has been played. */
    private static void travel(List<Profile.Step> way, double toHz, AtomicReference<Hand> hand, Playback playback) {
        if (way.size() == 1 && Double.isNaN(fromHz(way.get(0))) && hand.get().speedHz() == toHz) {
            return; // it is there already
        }
        Travel travel = new Travel(way);
        hand.set(hand.get().travelling(travel, toHz));
        playedTo(playback.framesUntil(travel.seconds()), playback);
    }

    /** Waits until so many frames have been played, or it is over. */
    private static void playedTo(long frame, Playback playback) {
        try {
            while (playback.status().framesPlayed() < frame && !playback.isOver()) {
                Thread.sleep(TICK_MILLIS);
            }
        } catch (InterruptedException e) {
            throw interrupted();
        }
    }

    private void read(SweepStop step, Expected expected, AtomicReference<Hand> hand, Playback playback) {
        Optional<String> line = talk.answer("Displayed, in " + expected.unit().symbol() + ": ", playback::isOver);
        while (line.isPresent() && !understood(line.get(), step, expected, hand, playback)) {
            line = talk.answer("Displayed, in " + expected.unit().symbol() + ": ", playback::isOver);
        }
    }

    /** False when it has to be asked again. */
    private boolean understood(String line, SweepStop step, Expected expected, AtomicReference<Hand> hand, Playback playback) {
        String word = line.toLowerCase(Locale.ROOT);
        switch (word) {
            case "" -> {
                return keep(step, expected, Optional.empty());
            }
            case "back" -> {
                return back(hand, playback);
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
                        talk::say, question -> talk.answer(question, playback::isOver)));
                return answer.isPresent() && keep(step, expected, answer);
            }
        }
    }

    private static Optional<Answer> word(String word) {
        return Optional.ofNullable(TraceAnswer.WORDS.get(word)).filter(kind -> kind != Answer.Kind.COMES_AND_GOES).map(Answer::of);
    }

    private boolean back(AtomicReference<Hand> hand, Playback playback) {
        int count = log.rows().size();
        if (count == 0) {
            talk.say("This is the first speed.");
            return false;
        }
        if (written(log::removeLast) && count > 1) {
            // so that it is reached from where it was reached before: a display that lags shows another number from above
            double beforeHz = steps.get(count - 2).speedHz();
            travel(List.of(new Profile.Ramp(Double.NaN, beforeHz, seconds(next().way().get(0)))), beforeHz, hand, playback);
        }
        return true;
    }

    private boolean keep(SweepStop step, Expected expected, Optional<Answer> seen) {
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
