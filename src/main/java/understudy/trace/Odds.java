package understudy.trace;

import java.util.Arrays;

/**
 * How likely each suspect is to be the one bad thing, after all that was seen; immutable. Bayes' rule, kept as logarithms,
 * so that hundreds of readings that point one way still leave a number for the other. The order in which things were seen
 * doesn't matter. When the evidence leaves nobody possible, all probabilities are 0.
 */
public final class Odds {

    private final double[] logWeights; // minus infinity: can't be
    private final double[] probabilities;

    private Odds(double[] logWeights) {
        this.logWeights = logWeights;
        this.probabilities = new double[logWeights.length];
        double most = Arrays.stream(logWeights).max().orElseThrow();
        if (most > Double.NEGATIVE_INFINITY) {
            double sum = 0;
            for (int suspect = 0; suspect < logWeights.length; suspect++) {
                probabilities[suspect] = StrictMath.exp(logWeights[suspect] - most);
                sum += probabilities[suspect];
            }
            for (int suspect = 0; suspect < logWeights.length; suspect++) {
                probabilities[suspect] /= sum;
            }
        }
    }

    /**
     * Before anything was seen.
     *
     * @param prior one for each suspect, from the sensor's side to the module; 0 or more, one above 0, any scale
     */
    static Odds of(double... prior) {
        double[] logWeights = logarithms(prior);
        if (Arrays.stream(prior).noneMatch(odds -> odds > 0)) {
            throw new IllegalArgumentException("one suspect at least must be possible");
        }
        return new Odds(logWeights);
    }

    /** @param likelihoods of what was seen, if it were this suspect: one each, 0 or more, any scale */
    Odds after(double... likelihoods) {
        if (likelihoods.length != logWeights.length) {
            throw new IllegalArgumentException(likelihoods.length + " likelihoods for " + logWeights.length + " suspects");
        }
        double[] after = logarithms(likelihoods);
        for (int suspect = 0; suspect < after.length; suspect++) {
            after[suspect] += logWeights[suspect];
        }
        return new Odds(after);
    }

    /** After an injection at a point: what was read can only tell the suspects up to there from those behind. */
    Odds after(int point, boolean good, Access access) {
        double[] likelihoods = new double[logWeights.length];
        Arrays.fill(likelihoods, 0, point + 1, access.likelihoodUpTo(good));
        Arrays.fill(likelihoods, point + 1, likelihoods.length, access.likelihoodBehind(good));
        return after(likelihoods);
    }

    private static double[] logarithms(double[] values) {
        return Arrays.stream(values).map(value -> {
            if (!(value >= 0) || value == Double.POSITIVE_INFINITY) {
                throw new IllegalArgumentException("odds are 0 or more, not " + value);
            }
            return StrictMath.log(value);
        }).toArray();
    }

    /** Whether anybody is left who could be it. */
    public boolean possible() {
        return probability(mostLikely()) > 0;
    }

    public int suspects() {
        return probabilities.length;
    }

    /** That it is this suspect; the suspects are counted from the sensor's side, 0, to the module. */
    public double probability(int suspect) {
        return probabilities[suspect];
    }

    /** The first of them, if several are equally likely. */
    public int mostLikely() {
        int best = 0;
        for (int suspect = 1; suspect < probabilities.length; suspect++) {
            best = probabilities[suspect] > probabilities[best] ? suspect : best;
        }
        return best;
    }
}
