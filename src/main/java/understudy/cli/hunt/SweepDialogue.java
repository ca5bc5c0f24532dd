package understudy.cli.hunt;

import java.io.IOException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import understudy.audio.PlayerEnd;
import understudy.audio.PlayerReport;
import understudy.audio.PlayerSettings;
import understudy.bench.Clearance;
import understudy.bench.Playback;
import understudy.bench.SignalPlan;
import understudy.bench.SteadySignal;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.Dialogue;
import understudy.pattern.Profile;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.refusal.Refused;
import understudy.sweep.SweepInput;
import understudy.sweep.SweepRow;
import understudy.sweep.SweepState;
import understudy.sweep.SweepStop;
import understudy.sweep.SweepTable;
import understudy.text.WholeFile;
import understudy.wave.Hand;

/** Leads through a sweep: goes to each speed without a gap in the signal, and waits for what is displayed there. */
final class SweepDialogue {

    private static final Question<Boolean> AGAIN = goOnOrStop("Press Enter to play again, or type stop:",
            "What was read before is kept.", "it plays again");
    private static final Question<Boolean> RETRY = goOnOrStop("Enter or stop:", "The row is not on the disk yet.", "it is written again");

    private final TraceTalk talk;
    private final SweepTable log;
    private final SteadySignal signal;
    private final Clearance clearance;
    private final Clock clock;
    private SweepState state;

    /** @param begun how it stands; its rows are in the table */
    SweepDialogue(TraceTalk talk, SweepTable log, SweepState begun, SteadySignal signal, Clearance clearance, Clock clock) {
        this.talk = talk;
        this.log = log;
        this.state = begun;
        this.signal = signal;
        this.clearance = clearance;
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
        while (!state.isOver()) {
            PlayerReport report = play();
            if (!state.isOver()) {
                String reason = report.end() instanceof PlayerEnd.Lost lost ? lost.reason() : "playing ended";
                talk.say("The signal is gone: " + reason + ".");
                if (talk.ask(AGAIN, () -> false).orElseThrow()) {
                    state = state.after(new SweepInput.Stop(), clock.instant());
                }
            }
        }
    }

    private static Question<Boolean> goOnOrStop(String sentence, String why, String goesOn) {
        return new Question<>(sentence, why, new Answers.Beside<>(new Answers.EmptyLine<>("press it alone: " + goesOn),
                typed -> Optional.of(true).filter(stop -> typed.equalsIgnoreCase("stop")),
                List.of(new Answers.Meaning("stop", "ends the sweep here"))), Optional.of(false));
    }

    private PlayerReport play() {
        double startHz = state.next().startHz();
        SignalPlan plan = signal.plan().startingAt(startHz);
        AtomicReference<Hand> hand = plan.hand();
        hand.set(hand.get().withSpeedHz(startHz));
        try (Playback playback = Playback.open(plan, hand, signal.destination(), PlayerSettings.DEFAULT, clearance)) {
            talk.silenceBy(playback::stop);
            playback.start();
            through(playback);
            PlayerReport report = playback.end();
            playback.shortage().map(CommandWords::text).ifPresent(talk::say);
            return report;
        } finally {
            talk.silenceBy(() -> {});
        }
    }

    /** Until all was read, the user stopped, or the signal is gone. */
    private void through(Playback playback) {
        while (!state.isOver() && !playback.isOver()) {
            SweepStop stop = state.next();
            int gaps = playback.status().underruns();
            talk.gap();
            talk.say("Step " + (state.rows().size() + 1) + " of " + state.stops().size() + ": "
                    + state.circuit().words(stop.speedHz()) + "; expected: " + state.expected());
            playback.travel(stop.way(), stop.speedHz());
            playback.dwell(stop.dwellSeconds());
            read(playback);
            if (playback.status().underruns() > gaps) {
                talk.say("Mind: the signal itself had a gap just now. If the display faltered then, type back.");
            }
        }
    }

    /** Asks until this stop is read, left, or the signal is gone. */
    private void read(Playback playback) {
        int before = state.rows().size();
        while (!state.isOver() && state.rows().size() == before) {
            Optional<SweepInput> input = talk.ask(state.question(), playback::isOver);
            if (input.isEmpty()) {
                return;
            }
            try {
                take(input.get(), playback);
            } catch (Refused e) {
                talk.say(Dialogue.capital(e.wrong()) + ".");
            }
        }
    }

    private void take(SweepInput input, Playback playback) {
        SweepState after = state.after(input, clock.instant());
        int rows = after.rows().size();
        if (rows > state.rows().size()) {
            keep(after, input);
        } else if (rows < state.rows().size()) {
            if (written(log::removeLast)) {
                state = after;
                goBack(playback);
            }
        } else {
            state = after;
        }
    }

    private void keep(SweepState after, SweepInput input) {
        SweepRow row = after.rows().get(after.rows().size() - 1);
        if (!written(() -> log.add(row))) {
            return;
        }
        state = after;
        if (input instanceof SweepInput.Shown shown && !shown.note().isEmpty()) {
            talk.say(shown.note() + ".");
        }
        if (row.seen().isPresent()) {
            talk.say(after.verdict());
        }
    }

    /** So that it is reached from where it was reached before: a display that lags shows another number from above. */
    private void goBack(Playback playback) {
        int count = state.rows().size();
        if (count > 0) {
            double beforeHz = state.stops().get(count - 1).speedHz();
            playback.travel(List.of(new Profile.Ramp(Double.NaN, beforeHz, state.next().way().get(0).seconds())), beforeHz);
        }
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
                if (talk.ask(RETRY, () -> false).orElseThrow()) {
                    state = state.after(new SweepInput.Stop(), clock.instant());
                    return false;
                }
            }
        }
    }
}
