package understudy.trace;

import java.util.ArrayList;
import java.util.List;

/** What a job's evidence does not hold: a sentence each, so that a record claims no more than it should. */
public final class Unproven {

    private Unproven() {}

    public static List<String> of(Hunt hunt) {
        List<String> sentences = new ArrayList<>();
        if (!hunt.methodProven()) {
            sentences.add("Rig and method were not proven on a circuit that works.");
        }
        Finding finding = hunt.finding();
        if (!finding.decided()) {
            sentences.add("No part was convicted: the likeliest, " + finding.names() + ", has " + Certainty.of(finding.probability())
                    + ", and " + Certainty.of(hunt.circuit().confidence()) + " are asked for.");
        } else {
            sentences.add("Another part may be at fault, with a probability of " + Certainty.doubt(finding.probability())
                    + ": readings can be wrong, and there may be more than one fault.");
        }
        if (finding.suspects().size() > 1) {
            sentences.add("Between " + finding.names() + " nobody could inject, so it is not known which of them it is.");
        }
        if (!hunt.clashes().isEmpty()) {
            sentences.add("Some readings contradict each other; they were weighed, not explained.");
        }
        if (finding.is(Suspect.Side.SENSOR) && !lowered(hunt)) {
            sentences.add("The signal was not lowered: a corroded contact that still passes the full signal would not have shown.");
        }
        if (finding.touches(Suspect.Side.SENSOR)) {
            sentences.add("Sensor, ring and air gap were not tested themselves: that the way from there on is sound points at them.");
        }
        if (!hunt.repairProven()) {
            sentences.add("That the repair holds was not proven.");
        }
        if (!drivenWithItsOwnSensor(hunt)) {
            sentences.add("Whether the display works with the vehicle's own sensor, on the road, was not tried.");
        }
        return sentences;
    }

    private static boolean lowered(Hunt hunt) {
        return hunt.standing().stream().anyMatch(event -> event.entry() instanceof Entry.Injected injected
                && !injected.place().onReference() && injected.levelPart() < 1);
    }

    private static boolean drivenWithItsOwnSensor(Hunt hunt) {
        return hunt.standing().stream().anyMatch(event -> event.entry() instanceof Entry.Closed closed
                && closed.ownSensorWorks().isPresent());
    }
}
