package understudy.trace;

import java.util.Arrays;

/**
 * What is believed of every suspect, after all evidence so far: Bayes' rule, by logarithms, so that no amount of evidence
 * rounds to nothing. Immutable. Suspect h is bad with probability(h); they add up to 1.
 */
public final class Odds {

    /** Natural logarithms of the weights, the largest 0; minus infinity for what can't be any more. */
    private final double[] logs;
    private final double[] probabilities;

    private Odds(double[] logs) {
        double most = Arrays.stream(logs).max().orElseThrow();
        if (most == Double.NEGATIVE_INFINITY) {
            throw new TraceException("no single fault explains these readings, and they are declared to be never wrong",
                    "withdraw one that you doubt, or declare in the circuit file how often readings are wrong");
        }
        this.logs = Arrays.stream(logs).map(log -> log - most).toArray();
        double sum = Arrays.stream(this.logs).map(Math::exp).sum();
        this.probabilities = Arrays.stream(this.logs).map(log -> Math.exp(log) / sum).toArray();
    }

    /** @param weights of the suspects before anything is measured, 0 or more, at least one above 0 */
    public static Odds of(double[] weights) {
        return new Odds(Arrays.stream(weights).map(Math::log).toArray());
    }

    /**
     * After an injection.
     *
     * @param ifSound  probability of what was read, if the way from the point to the module is sound
     * @param ifBroken likewise if it is not
     */
    public Odds after(int point, double ifSound, double ifBroken) {
        double[] likelihoods = new double[logs.length];
        for (int suspect = 0; suspect < logs.length; suspect++) {
            likelihoods[suspect] = suspect <= point ? ifSound : ifBroken;
        }
        return after(likelihoods);
    }

    /** After something was seen that has these probabilities, each if that suspect is the bad one. */
    public Odds after(double[] likelihoods) {
        double[] after = new double[logs.length];
        for (int suspect = 0; suspect < logs.length; suspect++) {
            after[suspect] = logs[suspect] + Math.log(likelihoods[suspect]);
        }
        return new Odds(after);
    }

    public double probability(int suspect) {
        return probabilities[suspect];
    }

    /** Of all suspects from one to another, both included. */
    public double probability(int from, int to) {
        double sum = 0;
        for (int suspect = from; suspect <= to; suspect++) {
            sum += probabilities[suspect];
        }
        return sum;
    }

    public int count() {
        return logs.length;
    }
}
