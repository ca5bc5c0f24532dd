package understudy.hunt;

import java.util.List;
import understudy.pattern.Hazard;
import understudy.reading.Expected;

/**
 * The signal of one circuit of a hunt.
 *
 * @param speedHz     turns per second of the pattern
 * @param frequencyHz as the module counts it
 * @param expected    what the display should show
 * @param clipVolts   alternating volts that a meter shows at the clips at full level
 * @param words       speed and frequency as they are shown
 * @param unread      cautions that nobody has agreed to yet for where this signal goes
 */
public record HuntSignal(double speedHz, double frequencyHz, Expected expected, double clipVolts, String words, List<Hazard> unread) {
    public HuntSignal {
        unread = List.copyOf(unread);
    }
}
