package understudy.hunt;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import understudy.pattern.Hazard;
import understudy.trace.Entry;
import understudy.trace.EventWords;
import understudy.trace.Hunt;
import understudy.trace.NextStep;
import understudy.trace.PinLimits;
import understudy.trace.Place;

/** From one session to the next: gathers what changes. Used once, by one thread. */
final class Turn {

    private final HuntEquipment equipment;
    private final Instant at;
    private final List<Remark> remarks = new ArrayList<>();
    private final Set<Hazard> ticked;
    private Hunt hunt;
    private Clips clips;

    Turn(Hunt hunt, HuntEquipment equipment, Clips clips, Set<Hazard> ticked, Instant at) {
        this.hunt = hunt;
        this.equipment = equipment;
        this.clips = clips;
        this.ticked = new HashSet<>(ticked);
        this.at = at;
    }

    Hunt hunt() {
        return hunt;
    }

    HuntEquipment equipment() {
        return equipment;
    }

    Turn say(String sentence) {
        return show(new Remark.Sentence(sentence));
    }

    Turn gap() {
        return show(new Remark.Gap());
    }

    Turn show(Remark remark) {
        remarks.add(remark);
        return this;
    }

    /** @return the number of the step */
    int keep(Entry entry) {
        hunt = hunt.after(at, entry);
        return hunt.events().size();
    }

    /** Whether this could be kept. @throws understudy.refusal.Refused when it could not */
    void admit(Entry entry) {
        hunt.after(at, entry);
    }

    /** Waits for that. */
    HuntSession to(Stage stage) {
        return new HuntSession(hunt, equipment, clips, ticked, stage, remarks);
    }

    /** What comes next follows from how the hunt stands. */
    HuntSession next() {
        NextStep next = hunt.next();
        if (next instanceof NextStep.Caution caution) {
            return Cautioning.begin(this, caution.hazards());
        } else if (next instanceof NextStep.Inject inject) {
            gap().say("NEXT: " + (inject.place().onReference() ? "the reference circuit, " : "") + hunt.name(inject.place()) + ". "
                    + inject.reason());
            return inject(inject.place());
        } else if (next instanceof NextStep.Prove prove) {
            return Ending.prove(this, prove);
        } else if (next instanceof NextStep.Repair) {
            return Ending.repair(this);
        } else if (next instanceof NextStep.Close) {
            return Ending.close(this, true);
        }
        return to(new Asides.Ended());
    }

    /** Where the user wants it, as soon as anything may be injected. */
    HuntSession instead(Place place) {
        if (hunt.next() instanceof NextStep.Caution) {
            return next();
        }
        gap().say("INSTEAD: " + hunt.name(place) + ".");
        return inject(place);
    }

    private HuntSession inject(Place place) {
        if (clips.on(place) && hunt.measured(place)) {
            return to(new Injecting.Clipped(place, true));
        } else if (equipment.resumed() && !clips.known() && hunt.measured(place)) {
            return to(new Injecting.StillClipped(place));
        }
        return goTo(place);
    }

    /** With the clips off, to a place whose pin is measured first. */
    HuntSession goTo(Place place) {
        PinLimits pins = pins(place);
        String off = clips.at().isPresent() ? "Take the clips off, the signal clip first. "
                : equipment.resumed() && !clips.known() ? "If the clips are still on, take them off, the signal clip first. " : "";
        boolean unplugged = clips.unplugged().filter(circuit -> circuit == place.onReference()).isPresent();
        say(off + "Go to " + hunt.name(place) + ", about "
                + EventWords.minutes(hunt.circuitOf(place).points().get(place.point()).reachMinutes()) + ". "
                + (unplugged ? "" : "Unplug this circuit's sensor, and leave it so while you inject: two sources at once show nothing. ")
                + pins.how());
        clips = clips.off(place.onReference());
        return to(new Injecting.Pin(place));
    }

    PinLimits pins(Place place) {
        return equipment.pins(hunt.circuitOf(place)).within(hunt.job().equipment().pinVolts());
    }

    /** The clips are on; what has to be agreed to is, or is asked first; then it plays. */
    HuntSession play(Place place) {
        clips = clips.onAt(place);
        if (hunt.next() instanceof NextStep.Caution) {
            return next();
        } else if (!hunt.measured(place)) { // it was, and was withdrawn
            return goTo(place);
        }
        List<Hazard> unread = equipment.signal(place).unread().stream().filter(hazard -> !ticked.contains(hazard)).toList();
        if (!unread.isEmpty()) {
            return Cautioning.begin(this, unread, place);
        }
        gap().say("It plays: " + equipment.signal(place).words() + ".");
        if (hunt.circuitOf(place).comesAndGoes()) {
            say("The fault comes and goes: for half a minute at least, watch the display while you move harness and connectors"
                    + " between the clips and the module, one after the other. Then answer.");
        }
        say("Type a number, nothing, erratic or moves; ? shows what else goes.");
        return to(Reading.of(place));
    }

    void ticked(List<Hazard> hazards) {
        keep(new Entry.Cautioned(hazards));
        ticked.addAll(hazards);
    }
}
