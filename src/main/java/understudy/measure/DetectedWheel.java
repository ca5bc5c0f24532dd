package understudy.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What a decoder makes of a recorded wheel: teeth, gaps, polarity, timing instants and speed.
 *
 * <p>A ring without a gap repeats from tooth to tooth, so nobody can tell from the signal how many make a turn: then
 * {@code eventsPerTurn} is 0 and speeds are events per second. Where a wheel looks alike several times a turn, the
 * smallest part that repeats is called its turn.
 *
 * @param sensor           as told, or as judged from the shape
 * @param polarity         by the gaps; of an even ring UNKNOWN
 * @param levelVolts       at which the instants were taken
 * @param eventsPerTurn    teeth that pass in one turn; 0 if unknown
 * @param placesPerTurn    the same with gaps filled, 60 for 60-2; 0 if unknown, or if the teeth stand on no even grid
 * @param intervalsPitches of one turn, from tooth 1; the last is the longest; empty if unknown
 * @param gaps             intervals longer than 1.25 pitches
 * @param instantsSeconds  timing instants from the first sample: leading edges, or zero crossings at teeth
 * @param firstOfTurn      index of an instant that is tooth 1
 * @param speedSeconds     the middle of each interval
 * @param speeds           there: turns per second, or events per second if the teeth per turn are unknown
 */
public record DetectedWheel(
        Sensor sensor,
        Polarity polarity,
        double levelVolts,
        int eventsPerTurn,
        int placesPerTurn,
        double[] intervalsPitches,
        List<Gap> gaps,
        double[] instantsSeconds,
        int firstOfTurn,
        double[] speedSeconds,
        double[] speeds) {

    private static final double LEAST_GAP_PITCHES = 1.25;

    /** What made the signal. */
    public enum Sensor {
        /** Hall-like: two levels; the edges are the events. */
        TWO_LEVEL,
        /** Variable reluctance: the steep zero crossings are the events. */
        RELUCTOR
    }

    /** Which way round the signal is. */
    public enum Polarity {
        /** Teeth are high, or the crossing at a tooth goes negative. */
        NORMAL,
        /** Teeth are low, or the crossing at a tooth goes positive: two wires swapped. */
        REVERSED,
        UNKNOWN
    }

    /**
     * A gap between teeth.
     *
     * @param afterTooth number of the tooth before it; tooth 1 is the first after the longest gap
     * @param pitches    from that tooth to the next; 3 for two missing teeth
     */
    public record Gap(int afterTooth, double pitches) {}

    static DetectedWheel of(
            Sensor sensor, Polarity polarity, double levelVolts, double[] instantsSeconds, Rhythm rhythm) {
        List<Gap> gaps = new ArrayList<>();
        double sum = 0;
        for (int k = 0; k < rhythm.events(); k++) {
            sum += rhythm.intervals()[k];
            if (rhythm.intervals()[k] > LEAST_GAP_PITCHES) {
                gaps.add(new Gap(k + 1, rhythm.intervals()[k]));
            }
        }
        double[] at = new double[Math.max(0, instantsSeconds.length - 1)];
        double[] speeds = new double[at.length];
        for (int i = 0; i < at.length; i++) {
            at[i] = (instantsSeconds[i] + instantsSeconds[i + 1]) / 2;
            double part = rhythm.events() == 0
                    ? 1
                    : rhythm.intervals()[Math.floorMod(i - rhythm.first(), rhythm.events())] / sum;
            speeds[i] = part / (instantsSeconds[i + 1] - instantsSeconds[i]);
        }
        return new DetectedWheel(sensor, polarity, levelVolts, rhythm.events(), rhythm.places(), rhythm.intervals(),
                List.copyOf(gaps), instantsSeconds, rhythm.first(), at, speeds);
    }

    /** Mean events per second from the first to the last instant. */
    public double eventRateHz() {
        int last = instantsSeconds.length - 1;
        return last < 1 ? Double.NaN : last / (instantsSeconds[last] - instantsSeconds[0]);
    }

    /** One line for people: "58 teeth a turn on 60 places, gap of 3.0 pitches after tooth 58". */
    public String inWords() {
        StringBuilder words = new StringBuilder();
        if (eventsPerTurn == 0) {
            words.append(String.format(Locale.ROOT,
                    "an even row of events, %.6g a second; no gap, so the teeth per turn are not known", eventRateHz()));
        } else {
            words.append(eventsPerTurn).append(eventsPerTurn == 1 ? " tooth" : " teeth").append(" a turn");
            words.append(placesPerTurn == 0 ? ", unevenly spaced" : " on " + placesPerTurn + " places");
            for (Gap gap : gaps) {
                words.append(String.format(Locale.ROOT, ", gap of %.1f pitches after tooth %d", gap.pitches(), gap.afterTooth()));
            }
        }
        if (polarity == Polarity.REVERSED) {
            words.append(sensor == Sensor.RELUCTOR ? "; the two wires are swapped" : "; teeth are low");
        }
        return words.toString();
    }
}
