package understudy.cli.hunt;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import understudy.audio.Destination;
import understudy.audio.PlayerEnd;
import understudy.audio.PlayerReport;
import understudy.audio.PlayerSettings;
import understudy.bench.Agreement;
import understudy.bench.Clearance;
import understudy.bench.Consent;
import understudy.bench.Outlet;
import understudy.bench.Playback;
import understudy.bench.SignalPlan;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ConsentDialogue;
import understudy.cli.terminal.Dialogue;
import understudy.cli.terminal.Surroundings;
import understudy.hunt.HuntInput;
import understudy.hunt.HuntKit;
import understudy.hunt.HuntSession;
import understudy.hunt.Injection;
import understudy.refusal.Refused;
import understudy.store.Jobs;
import understudy.trace.Hunt;
import understudy.view.RemarkText;
import understudy.wave.Hand;

/** Leads a hunt at the terminal: shows what the session says, reads, keeps each answer, and plays while the session says so. */
final class HuntDialogue {

    /** A file that is hardly begun when the answer is there already would show nothing. */
    private static final double LEAST_FILE_SECONDS = 0.5;

    private final Surroundings surroundings;
    private final TraceTalk talk;
    private final Jobs jobs;
    private final HuntKit equipment;
    private HuntSession session;

    HuntDialogue(Surroundings surroundings, TraceTalk talk, Jobs jobs, HuntKit equipment, HuntSession session) {
        this.surroundings = surroundings;
        this.talk = talk;
        this.jobs = jobs;
        this.equipment = equipment;
        this.session = session;
    }

    Hunt hunt() {
        return session.hunt();
    }

    /** Returns when the job is closed; throws {@link TraceTalk.Left} when the user leaves before. */
    void run() {
        show();
        while (!session.isOver()) {
            if (session.playing().isPresent()) {
                play(session.playing().get().onReference());
            } else {
                said(ask(() -> false).orElseThrow());
            }
        }
        if (session.left()) {
            throw new TraceTalk.Left();
        }
    }

    private void show() {
        talk.lines(new RemarkText(session.hunt()).lines(session.remarks()));
    }

    private Optional<HuntInput> ask(BooleanSupplier over) {
        return talk.ask(session.question(), over);
    }

    /** What was said is on the disk before anything else is shown or asked; what does not go now changes nothing. */
    private void said(HuntInput input) {
        if (take(input)) {
            shown();
        }
    }

    /** Remarks on a signal wait until it really plays. */
    private void shown() {
        if (session.playing().isEmpty()) {
            show();
        }
    }

    private boolean take(HuntInput input) {
        try {
            HuntSession after = session.after(input, surroundings.clock().instant());
            jobs.keep(session.hunt(), after.hunt());
            session = after;
            return true;
        } catch (Refused e) {
            if (e.mend() != Refused.Mend.INPUT) {
                throw e;
            }
            talk.say(Dialogue.capital(e.wrong()) + "; " + e.right() + ".");
            return false;
        }
    }

    /** From Enter to what the display shows. */
    private void play(boolean onReference) {
        Injection signal = equipment.injection(onReference);
        AtomicReference<Hand> hand = signal.plan().hand();
        Outlet outlet = equipment.outlet().numbered(session.hunt().injectionCount() + 1);
        Optional<Path> file = outlet.file();
        Destination destination = file.isPresent() ? outlet.destination(signal.plan(), OptionalInt.empty()) : signal.destination();
        Optional<HuntInput> last = Optional.empty();
        PlayerReport report;
        try (Playback playback = Playback.open(signal.plan(), hand, destination, PlayerSettings.DEFAULT, clearance(signal.plan()))) {
            talk.silenceBy(playback::stop);
            playback.start();
            show();
            file.ifPresent(into -> talk.say("Into " + into + "."));
            while (last.isEmpty() && !playback.isOver()) {
                Optional<HuntInput> input = ask(playback::isOver);
                if (input.isPresent() && endsIt(input.get())) {
                    last = input;
                } else if (input.isPresent()) {
                    said(input.get(), hand);
                }
            }
            if (file.isPresent() && last.isPresent()) {
                playback.awaitPlayed(LEAST_FILE_SECONDS);
            }
            report = playback.end();
            playback.shortage().map(CommandWords::text).ifPresent(talk::say);
        } finally {
            talk.silenceBy(() -> {});
        }
        if (last.isEmpty() || report.end() instanceof PlayerEnd.Lost) {
            String reason = report.end() instanceof PlayerEnd.Lost lost ? lost.reason() : "playing ended before the answer came";
            said(new HuntInput.SignalLost(reason));
            return;
        }
        gaps(report);
        said(last.get());
    }

    /** While it plays on. */
    private void said(HuntInput input, AtomicReference<Hand> hand) {
        if (take(input)) {
            hand.set(hand.get().withLevel(session.levelPart()));
            show();
        }
    }

    /** Whether the signal ends with this; what is refused does not end it. */
    private boolean endsIt(HuntInput input) {
        try {
            return session.after(input, surroundings.clock().instant()).playing().isEmpty();
        } catch (Refused e) {
            return false;
        }
    }

    /** The session has asked for all ticks that are missing for where this goes. */
    private Clearance clearance(SignalPlan plan) {
        if (!equipment.outlet().leaves()) {
            return Clearance.rehearsal();
        }
        Consent consent = Consent.of(plan, true, new Agreement(surroundings.folders().settings()));
        if (surroundings.terminal() && !consent.toRead().isEmpty()) {
            ConsentDialogue.keep(consent, surroundings);
        }
        return consent.agreedForNow();
    }

    private void gaps(PlayerReport report) {
        if (report.underrunCount() > 0) {
            talk.say("Mind: the signal itself had " + report.underrunCount() + (report.underrunCount() == 1 ? " gap" : " gaps")
                    + ", the longest " + Math.round(report.longestGapMillis()) + " ms. If the display faltered then, type again.");
        }
    }
}
