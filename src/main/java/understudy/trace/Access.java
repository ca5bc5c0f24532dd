package understudy.trace;

/**
 * What an injection at one point costs, and what it is worth.
 *
 * @param minutes     to reach the point, clip on and read the display; above 0
 * @param injectable  whether the rig can be clipped on there
 * @param wronglyBad  share of injections that read bad though the fault isn't behind the point; 0 to below 0.5
 * @param wronglyGood share that read good though it is; 0 to below 0.5
 */
record Access(double minutes, boolean injectable, double wronglyBad, double wronglyGood) {

    /** @throws IllegalArgumentException when a number can't be */
    Access {
        if (!(minutes > 0) || minutes == Double.POSITIVE_INFINITY) {
            throw new IllegalArgumentException("to reach a point takes more than 0 minutes, not " + minutes);
        }
        checkRate(wronglyBad);
        checkRate(wronglyGood);
    }

    private static void checkRate(double rate) {
        if (!(rate >= 0 && rate < 0.5)) {
            throw new IllegalArgumentException("the share of wrong readings is 0 to below 0.5, not " + rate);
        }
    }

    boolean canBeWrong() {
        return wronglyBad > 0 || wronglyGood > 0;
    }

    double likelihoodUpTo(boolean good) {
        return good ? 1 - wronglyBad : wronglyBad;
    }

    double likelihoodBehind(boolean good) {
        return good ? wronglyGood : 1 - wronglyGood;
    }
}
