package understudy.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import understudy.quantity.NumberText;

/**
 * What has changed from one calibration of an output to the next.
 *
 * @param day              of the earlier one
 * @param conditionsBefore under which it was made, by name
 * @param before           what it found, by name with the unit in it
 * @param conditions       likewise of the later one
 * @param now              likewise
 */
public record CalibrationChanges(String day, Map<String, String> conditionsBefore, Map<String, Double> before,
        Map<String, String> conditions, Map<String, Double> now) {

    /** By more than these a value has changed, not scattered; a meter's own accuracy is 1 %. */
    private static final double MOST_VOLTS_PART = 0.03;
    private static final double MOST_OHMS_PART = 0.3;
    private static final double MOST_GAIN_DB = 0.2;
    private static final double MOST_CORNER_PART = 0.1;
    private static final double MOST_SINAD_FALL_DB = 6;
    /** Above, no circuit that a rig feeds can tell. */
    private static final double GOOD_SINAD_DB = 90;

    /** A sentence for each change; none where everything is as it was. */
    public List<String> sentences() {
        String since = " since the calibration of " + day;
        List<String> changes = new ArrayList<>();
        conditions.forEach((name, value) -> {
            String then = conditionsBefore.getOrDefault(name, value);
            if (!then.equals(value) && !name.equals("level")) {
                changes.add("Mind: the " + name + " is now " + value + ", but was " + then + " at the calibration of " + day
                        + "; results may differ for that alone");
            }
        });
        part("full scale", "fullScaleVolts", MOST_VOLTS_PART, since + "; check the system's volume", changes);
        part("output resistance", "outputOhms", MOST_OHMS_PART, since + "; check the load and the readings", changes);
        part("AC-coupling corner", "cornerHz", MOST_CORNER_PART, since + "; check the cable and the input", changes);
        if (Math.abs(change("gainDb")) > MOST_GAIN_DB) {
            changes.add("Mind: the gain has changed by " + NumberText.signed(change("gainDb"), 1) + " dB" + since
                    + "; check the system's volume and the recording level");
        }
        if (Math.abs(change("inverted")) > 0) {
            changes.add("Mind: the polarity is the other way round than at the calibration of " + day
                    + "; check the cable, and whether it is the same device");
        }
        if (change("sinadDb") < -MOST_SINAD_FALL_DB && now.get("sinadDb") < GOOD_SINAD_DB) {
            changes.add("Mind: noise and distortion have risen by " + NumberText.decibels(-change("sinadDb")) + since
                    + "; check the cable, its ground, and what else is plugged in");
        }
        return changes;
    }

    /** By how much more it is now; 0 if one of them was not told. */
    private double change(String key) {
        return before.containsKey(key) && now.containsKey(key) ? now.get(key) - before.get(key) : 0;
    }

    private void part(String name, String key, double most, String since, List<String> changes) {
        if (before.containsKey(key) && Math.abs(change(key) / before.get(key)) > most) {
            changes.add("Mind: the " + name + " has changed by " + NumberText.signed(100 * change(key) / before.get(key), 0)
                    + " %" + since);
        }
    }
}
