package understudy.trace;

/**
 * The usual way: from the sensor on towards the module, point by point, until the reading changes. Each point is left once its
 * answer is as sure as the confidence asks; what is still open when all are left is gone over again, the most doubtful first.
 */
record EndToEnd(Route route) implements Policy {

    @Override
    public int next(Odds odds) {
        double[] groups = route.groups(odds);
        int open = 0;
        double mostDoubt = -1;
        double upTo = 0;
        for (int test = 0; test < route.tests(); test++) {
            upTo += groups[test];
            double doubt = Math.min(upTo, 1 - upTo);
            if (doubt > 1 - route.confidence()) {
                return route.point(test);
            }
            open = doubt > mostDoubt ? test : open;
            mostDoubt = Math.max(mostDoubt, doubt);
        }
        return route.point(open);
    }
}
