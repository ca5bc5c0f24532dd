package understudy.store;

import java.time.Instant;
import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import understudy.rig.AudioOutput;

/**
 * One attempt to measure a rig's output.
 *
 * @param at         when
 * @param method     how, in a word or two: meter, loopback
 * @param output     as measured; none when it failed
 * @param conditions what held then, by name: meter, load, system volume
 * @param values     what was found, by name with the unit in it: latencySeconds, sinadDb; finite
 * @param remark     why it failed, or what to know of it; may be empty
 */
public record Calibration(
        Instant at,
        String method,
        Optional<AudioOutput> output,
        Map<String, String> conditions,
        Map<String, Double> values,
        String remark) {

    public Calibration {
        conditions = Collections.unmodifiableMap(new TreeMap<>(conditions));
        values = Collections.unmodifiableMap(new TreeMap<>(values));
        values.forEach((name, value) -> {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException(name + " must be a number, got " + value);
            }
        });
    }

    public boolean good() {
        return output.isPresent();
    }
}
