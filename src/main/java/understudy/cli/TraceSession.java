package understudy.cli;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import understudy.bench.Agreement;
import understudy.bench.Clearance;
import understudy.bench.Consent;
import understudy.bench.SignalPlan;
import understudy.pattern.Hazard;
import understudy.store.Jobs;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Place;
import understudy.trace.Step;

/** A hunt from where it stands to its end, or to where the user leaves it. */
final class TraceSession {

    private static final List<String> METHOD_CHECKS = List.of(
            "the clips: ground on ground, signal on the signal pin, and the sensor unplugged",
            "the rig: is it the right output, is the system's volume at 100 %?",
            "the polarity: try the two wires the other way round",
            "the level: volts ... compares what a meter shows at the clips with what is due",
            "the display: is it the right value, and does this module show it while it stands?",
            "the circuit file: teeth, ratio, unit");

    private final Surroundings surroundings;
    private final TraceEquipment equipment;
    /** Cautions ticked in this session, for where its signals go. */
    private final Set<Hazard> ticked = new HashSet<>();
    private final TraceTalk talk;
    private final TraceDesk desk;
    private final TraceInjection injection;
    private final TraceEnding ending;

    /** @param resumed the job was begun in an earlier session */
    TraceSession(Surroundings surroundings, TraceTalk talk, Jobs jobs, Hunt hunt, TraceEquipment equipment, boolean resumed) {
        this.surroundings = surroundings;
        this.equipment = equipment;
        this.talk = talk;
        this.desk = new TraceDesk(surroundings, talk, jobs, hunt);
        this.injection = new TraceInjection(talk, desk, equipment, this::clearance, resumed);
        this.ending = new TraceEnding(talk, desk);
    }

    /** Returns when the job is closed; throws {@link TraceTalk.Left} when the user leaves before. */
    void run() {
        while (!(desk.hunt().next() instanceof Step.Ended)) {
            try {
                step();
            } catch (TraceDesk.Turned turned) {
                // whatever it was, what comes next follows from how the job stands now
            }
        }
    }

    /** The job as it stands. */
    Hunt hunt() {
        return desk.hunt();
    }

    private void step() {
        Step next = desk.hunt().next();
        Optional<Place> chosen = desk.takeChosen();
        if (desk.takeClosing()) {
            ending.close(false);
        } else if (next instanceof Step.Caution caution) {
            caution(caution.hazards());
        } else if (chosen.isPresent()) {
            talk.gap();
            talk.say("INSTEAD: " + desk.hunt().name(chosen.get()) + ".");
            inject(chosen.get());
        } else if (next instanceof Step.Inject inject) {
            talk.gap();
            talk.say("NEXT: " + (inject.place().onReference() ? "the reference circuit, " : "") + desk.hunt().name(inject.place())
                    + ". " + inject.reason());
            inject(inject.place());
        } else if (next instanceof Step.Prove prove) {
            ending.prove(prove);
        } else if (next instanceof Step.Repair) {
            ending.repair();
        } else {
            ending.close(true);
        }
    }

    private void caution(List<Hazard> hazards) {
        talk.gap();
        talk.say("Read these cautions, one by one. Nothing is injected before each is ticked.");
        talk.lines(TraceText.ownCautions(desk.hunt()));
        int number = 0;
        for (Hazard hazard : hazards) {
            number++;
            talk.lines(Cautions.text(List.of(hazard)));
            String question = "Caution " + number + " of " + hazards.size() + ": will you work by it? Type yes: ";
            while (!desk.yes(question)) {
                talk.say("Without that nothing can be injected. See to it first; or type stop, and resume later.");
            }
        }
        desk.keep(new Entry.Cautioned(hazards));
        ticked.addAll(hazards);
    }

    /** A tick counts for what it was given for: one in a rehearsal, perhaps on another day, does not let a signal out. */
    private Clearance clearance(SignalPlan plan) {
        if (!equipment.outlet().leaves()) {
            return Clearance.rehearsal();
        }
        Consent consent = Consent.of(plan, true, new Agreement(surroundings.folders().settings()));
        List<Hazard> left = consent.toRead().stream().filter(hazard -> !ticked.contains(hazard)).toList();
        if (!left.isEmpty()) {
            caution(left);
        }
        if (surroundings.terminal() && !consent.toRead().isEmpty()) {
            ConsentDialogue.keep(consent, surroundings);
        }
        return consent.agreedForNow();
    }

    private void inject(Place place) {
        int before = desk.hunt().events().size();
        injection.at(place);
        if (desk.hunt().events().size() == before) {
            return; // the device was lost
        }
        if (place.onReference()) {
            reference();
        } else {
            new TraceText(desk.hunt()).clash(desk.hunt().events().size()).ifPresent(clash -> {
                talk.gap();
                talk.say(clash);
            });
            if (!desk.hunt().repairProven()) {
                talk.gap();
                talk.say("Suspects now:");
                talk.lines(new TraceText(desk.hunt()).suspects());
            }
        }
    }

    private void reference() {
        if (desk.hunt().methodProven()) {
            talk.say("Rig and method are proven. Now the suspect circuit.");
            return;
        }
        talk.say("Rig and method are not proven, so nothing that reads bad on the suspect circuit would count. Check:");
        METHOD_CHECKS.forEach(check -> talk.lines(Paragraph.lines("  - ", "    ", check)));
        while (true) {
            String line = desk.ask("Press Enter to inject there again, or type go on to do without the proof: ");
            if (line.isEmpty()) {
                return;
            } else if (line.equalsIgnoreCase("go on")) {
                desk.keep(new Entry.WentOn(desk.words("Why do you go on without it?", "Without the proof nobody knows whether rig and method work; the report"
                        + " says that you went on, and why.")));
                return;
            }
            talk.say("Press Enter, or type go on, other, note ..., stop or ?.");
        }
    }
}
