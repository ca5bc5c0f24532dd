package understudy.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What a plan has to reckon with: the suspects in groups that injections can tell apart, from the sensor to the module, and
 * between each two groups the cut that an injection makes. Injecting at cut k reads good if the fault lies in one of the
 * groups 0 to k.
 *
 * @param points      of each cut the point of the circuit
 * @param minutes     of each cut, above 0
 * @param wronglyBad  share of readings that are bad though they should be good; 0 to below 0.5
 * @param wronglyGood the reverse
 * @param confidence  at which a group is convicted; above 0.5, at most 1
 */
record Task(int[] points, double[] minutes, double wronglyBad, double wronglyGood, double confidence) {

    Task {
        points = points.clone();
        minutes = minutes.clone();
    }

    static Task of(Circuit circuit) {
        int[] points = IntStream.range(0, circuit.points().size())
                .filter(point -> circuit.points().get(point).injectable()).toArray();
        double[] minutes = Arrays.stream(points).mapToDouble(point -> circuit.points().get(point).reachMinutes())
                .toArray();
        return new Task(points, minutes, circuit.wronglyBad(), circuit.wronglyGood(), circuit.confidence());
    }

    int cuts() {
        return points.length;
    }

    /** Of each group the sum of its suspects' probabilities. */
    static double[] belief(Circuit circuit, Odds odds) {
        List<Double> belief = new ArrayList<>();
        for (List<Suspect> group : circuit.groups()) {
            belief.add(group.stream().mapToDouble(suspect -> odds.probability(suspect.index())).sum());
        }
        return belief.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /**
     * By Bayes' rule.
     *
     * @param after where the belief after the reading goes
     * @return how probable the reading was; when 0, {@code after} means nothing
     */
    double read(double[] belief, int cut, boolean good, double[] after) {
        double ifSound = good ? 1 - wronglyBad : wronglyBad;
        double ifBroken = good ? wronglyGood : 1 - wronglyGood;
        double sum = 0;
        for (int group = 0; group < belief.length; group++) {
            after[group] = belief[group] * (group <= cut ? ifSound : ifBroken);
            sum += after[group];
        }
        if (sum > 0) {
            for (int group = 0; group < belief.length; group++) {
                after[group] /= sum;
            }
        }
        return sum;
    }

    /** The likeliest group's probability is enough. */
    boolean settled(double[] belief) {
        for (double probability : belief) {
            if (probability >= confidence) {
                return true;
            }
        }
        return false;
    }

    /**
     * A number for what was read so far, whatever the order: one reading more adds to it. Where both kinds of error are
     * equally frequent, a good and a bad reading at one cut cancel, as they do for the belief.
     */
    long key(long before, int cut, boolean good) {
        long step = scattered(2 * cut);
        return before + (good ? step : wronglyBad == wronglyGood ? -step : scattered(2 * cut + 1));
    }

    /** SplitMix64's finisher (Steele, Lea and Flood, Fast splittable pseudorandom number generators, 2014). */
    private static long scattered(int index) {
        long z = (index + 1) * 0x9E3779B97F4A7C15L;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
