package understudy.trace;

import java.util.List;
import java.util.Optional;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.refusal.Refused;

/** Whether an entry may be added to a hunt as it stands. What is refused changes nothing. */
final class Admission {

    private static final double MOST_VOLTS = 1000;

    private final Hunt hunt;

    Admission(Hunt hunt) {
        this.hunt = hunt;
    }

    void check(Entry entry) {
        if (hunt.next() instanceof NextStep.Ended && !(entry instanceof Entry.Withdrawn || entry instanceof Entry.Corrected)) {
            throw new Refused("this job is closed", "begin a new one, or withdraw its closing to go on with it");
        }
        if (entry instanceof Entry.PinMeasured pin) {
            cautioned();
            place(pin.place());
            if (!(Math.abs(pin.volts()) <= MOST_VOLTS)) {
                throw new Refused(pin.volts() + " V on a sensor pin can't be", "look at the meter's range again");
            }
        } else if (entry instanceof Entry.Injected injected) {
            injected(injected);
        } else if (entry instanceof Entry.WentOn && hunt.methodProven()) {
            throw new Refused("the method is proven", "there is nothing to go on without");
        } else if (entry instanceof Entry.Withdrawn withdrawn) {
            withdrawn(withdrawn);
        } else if (entry instanceof Entry.Repaired) {
            repaired();
        } else if (entry instanceof Entry.Closed) {
            cautioned();
        } else if (entry instanceof Entry.Corrected corrected && corrected.detail() == Detail.REMARK && hunt.closing().isEmpty()) {
            throw new Refused("the job is not closed yet, so there is no remark to correct", "keep your words as a note");
        }
    }

    private void cautioned() {
        if (hunt.next() instanceof NextStep.Caution) {
            throw new Refused("the cautions were not ticked", "read and tick them first");
        }
    }

    private void place(Place place) {
        if (place.onReference() && hunt.subjects().reference().isEmpty()) {
            throw new Refused("this job has no reference circuit", "inject on the suspect circuit");
        }
        List<Point> points = hunt.circuitOf(place).points();
        if (place.point() < 0 || place.point() >= points.size()) {
            throw new Refused("the circuit has no point " + (place.point() + 1), "it has 1 to " + points.size());
        }
        if (!points.get(place.point()).injectable()) {
            throw new Refused("the rig can't be clipped on at " + hunt.name(place),
                    "take another point, or change the circuit file");
        }
    }

    private void injected(Entry.Injected injected) {
        cautioned();
        place(injected.place());
        if (!injected.place().onReference() && hunt.next() instanceof NextStep.Inject next && next.purpose() == NextStep.Purpose.METHOD) {
            throw new Refused("the method is not proven yet",
                    "inject on the reference circuit first, or say why you go on without");
        }
        if (!hunt.measured(injected.place())) {
            throw new Refused("the pin at " + hunt.name(injected.place()) + " was not measured, or more lies on it than"
                    + " the input allows", "measure it each time before you clip on; allowed are " + allowed());
        }
        if (!(injected.levelPart() > 0 && injected.levelPart() <= 1)) {
            throw new Refused("a level of " + Math.round(100 * injected.levelPart()) + " % can't be",
                    "allowed are more than 0 % to 100 %");
        }
        Optional<Integer> moved = injected.moved();
        int last = hunt.circuitOf(injected.place()).points().size();
        if (moved.isPresent() && !(moved.get() > injected.place().point() && moved.get() <= last)) {
            throw new Refused("what was moved lies on the sensor's side of the clips",
                    "only what lies between the clips and the module can make the display come and go");
        }
    }

    private String allowed() {
        var volts = hunt.job().equipment().pinVolts();
        return new Quantity(volts.from(), Unit.VOLT).rounded(3) + " to " + new Quantity(volts.to(), Unit.VOLT).rounded(3);
    }

    private void withdrawn(Entry.Withdrawn withdrawn) {
        Optional<Numbered> event = hunt.events().stream().filter(one -> one.number() == withdrawn.number()).findFirst();
        if (event.isEmpty()) {
            throw new Refused("there is no step " + withdrawn.number(), hunt.events().isEmpty()
                    ? "nothing has happened yet" : "there are 1 to " + hunt.events().size());
        } else if (!event.get().standing()) {
            throw new Refused("step " + withdrawn.number() + " is withdrawn already", "nothing needs to be done");
        } else if (event.get().entry() instanceof Entry.Withdrawn) {
            throw new Refused("step " + withdrawn.number() + " withdrew another", "do that other step again instead");
        } else if (event.get().entry() instanceof Entry.Corrected) {
            throw new Refused("step " + withdrawn.number() + " corrected something", "correct it once more instead");
        }
    }

    /** The module is replaced only after what else makes a sound one look dead was ruled out. */
    private void repaired() {
        cautioned();
        if (hunt.next() instanceof NextStep.Prove prove) {
            throw new Refused("the module is not convicted yet", "first prove: "
                    + String.join(", ", prove.outstanding().stream().map(Proof::key).toList()));
        }
        if (!(hunt.next() instanceof NextStep.Repair)) {
            throw new Refused("nothing is convicted yet, so there is nothing to repair",
                    "go on injecting, or keep what you did as a note");
        }
    }
}
