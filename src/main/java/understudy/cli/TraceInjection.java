package understudy.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import understudy.audio.Destination;
import understudy.audio.PlayerEnd;
import understudy.audio.PlayerReport;
import understudy.audio.PlayerSettings;
import understudy.audio.PlayerStatus;
import understudy.bench.Clearance;
import understudy.bench.Playback;
import understudy.bench.SignalPlan;
import understudy.trace.Answer;
import understudy.trace.Circuit;
import understudy.trace.Entry;
import understudy.trace.EventWords;
import understudy.trace.Judgement;
import understudy.trace.PinLimits;
import understudy.trace.Place;
import understudy.trace.Suspect;
import understudy.trace.Verdict;
import understudy.wave.Hand;

/** One injection: to the place, the pin measured, clipped on, played, the display read, judged. */
final class TraceInjection {

    /** A file that is hardly begun when the answer is there already would show nothing. */
    private static final double LEAST_FILE_SECONDS = 0.5;
    private static final long LOOK_MILLIS = 50;

    private final TraceTalk talk;
    private final TraceDesk desk;
    private final TraceEquipment equipment;
    private final Function<SignalPlan, Clearance> consent;
    private final boolean resumed;
    /** The circuit whose sensor the user was told to unplug: the reference or not. */
    private Optional<Boolean> unplugged = Optional.empty();
    private Optional<Place> clippedAt = Optional.empty();
    private boolean clipped;

    /** @param resumed the job was begun in an earlier session, from which the clips may still be on */
    TraceInjection(TraceTalk talk, TraceDesk desk, TraceEquipment equipment, Function<SignalPlan, Clearance> consent, boolean resumed) {
        this.talk = talk;
        this.desk = desk;
        this.equipment = equipment;
        this.consent = consent;
        this.resumed = resumed;
    }

    void at(Place place) {
        boolean stillOn = clippedAt.filter(place::equals).isPresent();
        if (!stillOn && resumed && !clipped && desk.hunt().measured(place)) {
            stillOn = desk.yes("Are the clips still on at " + desk.hunt().name(place) + " since then? yes or no:");
        }
        if (stillOn) {
            desk.ask("The clips are on at " + desk.hunt().name(place) + ". Press Enter to play:");
        } else {
            clipOn(place);
        }
        clippedAt = Optional.of(place);
        clipped = true;
        inject(place);
    }

    private void clipOn(Place place) {
        Circuit circuit = desk.hunt().circuitOf(place);
        PinLimits pins = equipment.pins(circuit).within(desk.hunt().job().equipment().pinVolts());
        String off = clippedAt.isPresent() ? "Take the clips off, the signal clip first. "
                : resumed && !clipped ? "If the clips are still on, take them off, the signal clip first. " : "";
        talk.say(off + "Go to " + desk.hunt().name(place) + ", about "
                + EventWords.minutes(circuit.points().get(place.point()).reachMinutes())
                + ". " + (unplugged.equals(Optional.of(place.onReference())) ? "" : "Unplug this circuit's sensor, and leave it so while"
                + " you inject: two sources at once tell nothing. ") + pins.how());
        unplugged = Optional.of(place.onReference());
        clippedAt = Optional.empty();
        boolean allowed = false;
        while (!allowed) {
            double volts = TraceNumbers.volts(talk, desk, "Volts on the pin, like 0.2 V: ");
            Entry.PinMeasured pin = new Entry.PinMeasured(place, volts);
            desk.keep(pin);
            allowed = desk.hunt().pinAllowed(pin);
            if (!allowed) {
                talk.say("REFUSED: allowed are " + pins.words() + ". " + pins.meaning(volts));
                talk.say("Measure again when that is mended; or type other, or stop.");
            } else {
                talk.say("Allowed: " + pins.words() + "." + pins.doubt(volts).map(doubt -> " " + doubt).orElse(""));
            }
        }
        desk.ask("Clip on: ground clip first, signal clip last. Then press Enter, and it plays:");
    }

    private void inject(Place place) {
        TraceSignal signal = equipment.signal(place.onReference());
        Clearance clearance = consent.apply(signal.plan());
        AtomicReference<Hand> hand = signal.plan().hand();
        TraceAnswer answer = new TraceAnswer(talk, desk, signal, hand);
        Optional<Answer> seen;
        PlayerReport report;
        Destination destination = equipment.outlet().file().map(this::numbered)
                .map(file -> equipment.outlet().into(file).destination(signal.plan(), OptionalInt.empty()))
                .orElse(signal.destination());
        try (Playback playback = Playback.open(signal.plan(), hand, destination, PlayerSettings.DEFAULT, clearance)) {
            talk.silenceBy(playback::stop);
            playback.start();
            talk.gap();
            talk.say("It plays: " + signal.words() + "."
                    + equipment.outlet().file().map(file -> " Into " + numbered(file) + ".").orElse(""));
            if (desk.hunt().circuitOf(place).comesAndGoes()) {
                talk.say("The fault comes and goes: for half a minute at least, watch the display while you move harness and"
                        + " connectors between the clips and the module, one after the other. Then answer.");
            }
            seen = answer.ask(playback::isOver);
            if (equipment.outlet().file().isPresent()) {
                awaitFile(playback);
            }
            report = playback.end();
            playback.shortage().map(CommandWords::text).ifPresent(talk::say);
        } finally {
            talk.silenceBy(() -> {});
        }
        if (seen.isEmpty() || report.end() instanceof PlayerEnd.Lost) {
            lost(report);
            return;
        }
        gaps(report);
        keep(place, signal, hand.get().level(), seen.get(), answer.clipPart());
    }

    private Path numbered(Path file) {
        long number = 1 + desk.hunt().events().stream().filter(event -> event.entry() instanceof Entry.Injected).count();
        String name = file.getFileName().toString();
        int dot = name.lastIndexOf('.');
        return file.resolveSibling(name.substring(0, dot) + "-" + number + name.substring(dot));
    }

    private static void awaitFile(Playback playback) {
        try {
            while (playback.status().secondsPlayed() < LEAST_FILE_SECONDS && playback.status().state() == PlayerStatus.State.PLAYING) {
                Thread.sleep(LOOK_MILLIS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void lost(PlayerReport report) {
        String reason = report.end() instanceof PlayerEnd.Lost lost ? lost.reason() : "playing ended before the answer came";
        talk.say("This reading does not count: " + reason + ".");
        desk.ask("Press Enter to play again: ");
    }

    private void gaps(PlayerReport report) {
        if (report.underrunCount() > 0) {
            talk.say("Mind: the signal itself had " + report.underrunCount() + (report.underrunCount() == 1 ? " gap" : " gaps")
                    + ", the longest " + Math.round(report.longestGapMillis()) + " ms. If the display faltered then, type again.");
        }
    }

    private void keep(Place place, TraceSignal signal, double level, Answer seen, Optional<Double> clipPart) {
        Optional<Integer> moved = seen.kind() == Answer.Kind.COMES_AND_GOES ? moved(place) : Optional.empty();
        Entry.Injected injected = new Entry.Injected(place, signal.speedHz(), signal.frequencyHz(), level, signal.expected(), seen,
                clipPart, moved);
        int number = desk.keep(injected);
        Judgement judgement = Judgement.of(injected);
        talk.gap();
        talk.say("Step " + number + ", " + desk.hunt().name(place) + ": " + judgement.verdict() + ". " + judgement.reason());
        if (level < 1 && judgement.verdict() == Verdict.BAD) {
            talk.say("That was at a level of " + EventWords.percent(level) + ". It is a fair test only if the display still reads"
                    + " right at that level nearer to the module; if it does not there either, take this step back (again).");
        }
    }

    private Optional<Integer> moved(Place place) {
        List<Suspect> pieces = desk.hunt().circuitOf(place).suspects();
        List<Suspect> between = pieces.subList(place.point() + 1, pieces.size());
        for (int i = 0; i < between.size(); i++) {
            talk.lines(Paragraph.lines("  " + (i + 1) + "  ", "     ", between.get(i).name()));
        }
        while (true) {
            String line = desk.ask("Which of these was moved just then? Its number, or Enter if you can't tell: ");
            if (line.isEmpty()) {
                return Optional.empty();
            } else if (line.matches("\\d{1,3}") && Integer.parseInt(line) >= 1 && Integer.parseInt(line) <= between.size()) {
                return Optional.of(between.get(Integer.parseInt(line) - 1).index());
            }
            talk.say("\"" + line + "\" is none of them; type a number from 1 to " + between.size() + ", or Enter.");
        }
    }
}
