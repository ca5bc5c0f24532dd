package understudy.measure;

import java.util.Arrays;
import understudy.refusal.Refused;

/**
 * How far each edge of a recording lies from where the wheel's geometry puts it, while the speed is steady or changes
 * linearly, or follows a program ({@link ProgramTiming}).
 *
 * <p>The angle over time is fitted to the edges by least squares, as a straight line or a parabola; what remains of each
 * edge is its miss, positive when late. Which edge of the turn comes first is found by trying all.
 *
 * @param rmsSeconds   of all misses
 * @param worstSeconds largest magnitude
 * @param worstAtSeconds when that edge came
 * @param startHz      turns per second at the first edge
 * @param endHz        at the last
 * @param firstEdge    which edge of the turn, or of the program, the first one is; from 0
 * @param clockRatio   seconds of the recording for one of the program; NaN where no program says how fast it should be
 * @param missSeconds  of every edge, in order
 */
public record EdgeTiming(
        double rmsSeconds,
        double worstSeconds,
        double worstAtSeconds,
        double startHz,
        double endHz,
        int firstEdge,
        double clockRatio,
        double[] missSeconds) {

    /** Turns whose edges decide which edge comes first. */
    private static final int TURNS_TO_ALIGN = 3;
    /** A miss by more than this part of the mean interval is no timing noise: the geometry is another. */
    private static final double MOST_MISS = 0.25;

    /** What the speed does. */
    public enum Course {
        STEADY(1),
        LINEAR(2);

        private final int degree;

        Course(int degree) {
            this.degree = degree;
        }
    }

    /**
     * @param instantsSeconds of the edges, rising order, none missing
     * @param edgesTurns      where the edges of one turn lie, rising, in turns, spanning less than one
     * @throws Refused if there are too few, or if they don't follow that geometry
     */
    public static EdgeTiming of(double[] instantsSeconds, double[] edgesTurns, Course course) {
        return of(instantsSeconds, edgesTurns, course, 1);
    }

    /**
     * Both directions' edges together, in alternation; geometry and instants each begin with either.
     *
     * @param risingTurns  where one turn's positive-going edges lie
     * @param fallingTurns likewise negative-going
     */
    static EdgeTiming ofBoth(
            Crossings crossings, double rateHz, double[] risingTurns, double[] fallingTurns, Course course) {
        double[] edges = new double[2 * risingTurns.length];
        if (risingTurns.length != fallingTurns.length || edges.length == 0) {
            throw new Refused("a turn needs as many rising as falling edges, got " + risingTurns.length + " and "
                    + fallingTurns.length, "");
        }
        // the geometry starts with an edge of the same direction as the recording
        boolean upFirst = crossings.rising().length == 0 || crossings.rising()[0];
        double[] leads = (upFirst ? risingTurns : fallingTurns).clone();
        double[] follows = (upFirst ? fallingTurns : risingTurns).clone();
        Arrays.sort(leads);
        for (int k = 0; k < leads.length; k++) {
            double lead = leads[k];
            edges[2 * k] = lead;
            edges[2 * k + 1] = Arrays.stream(follows)
                    .map(turns -> lead + (turns - lead - Math.floor(turns - lead))).min().orElseThrow();
        }
        double[] instants = Arrays.stream(crossings.frames()).map(frame -> frame / rateHz).toArray();
        return of(instants, edges, course, 2);
    }

    private static EdgeTiming of(double[] instants, double[] edges, Course course, int firstStep) {
        for (int k = 1; k < edges.length; k++) {
            if (!(edges[k] > edges[k - 1] && edges[k] < edges[0] + 1)) {
                throw new Refused("a turn's edges must be in rising order within one turn, but edge " + (k + 1)
                        + " lies at " + edges[k] + " turns, after " + edges[k - 1], "");
            }
        }
        if (instants.length < course.degree + 2 || edges.length == 0) {
            throw new Refused("edge timing needs at least " + (course.degree + 2) + " edges, got "
                    + instants.length, "record longer");
        }
        double[] some = Arrays.copyOf(instants, Math.min(instants.length, TURNS_TO_ALIGN * edges.length + 4));
        EdgeTiming best = null;
        for (int first = 0; first < edges.length; first += firstStep) {
            EdgeTiming tried = fitted(some, edges, first, course);
            best = best == null || tried.rmsSeconds < best.rmsSeconds ? tried : best;
        }
        EdgeTiming whole = fitted(instants, edges, best.firstEdge, course);
        double meanInterval = (instants[instants.length - 1] - instants[0]) / (instants.length - 1);
        for (int i = 0; i < instants.length; i++) {
            if (Math.abs(whole.missSeconds[i]) > MOST_MISS * meanInterval) {
                throw new Refused("edge " + (i + 1) + " at " + SampleCheck.seconds(instants[i]) + " lies "
                        + SampleCheck.seconds(whole.missSeconds[i]) + " from where this geometry puts it at "
                        + (course == Course.STEADY ? "steady" : "linearly changing")
                        + " speed", "check the pattern, the polarity, and that no edge is missing");
            }
        }
        return whole;
    }

    private static EdgeTiming fitted(double[] instants, double[] edges, int first, Course course) {
        int n = instants.length;
        double middle = (instants[0] + instants[n - 1]) / 2;
        double half = (instants[n - 1] - instants[0]) / 2;
        double middleTurns = Math.rint((first + n / 2.0) / edges.length);
        double[][] normal = new double[course.degree + 1][course.degree + 2];
        for (int i = 0; i < n; i++) {
            double x = (instants[i] - middle) / half;
            double angle = angle(edges, first + i) - middleTurns;
            double[] powers = {1, x, x * x};
            for (int r = 0; r <= course.degree; r++) {
                for (int c = r; c <= course.degree; c++) {
                    normal[r][c] += powers[r] * powers[c];
                }
                normal[r][course.degree + 1] += powers[r] * angle;
            }
        }
        double[] law = Arrays.copyOf(LeastSquares.solve(normal), 3);
        double[] misses = new double[n];
        double squares = 0;
        int worst = 0;
        for (int i = 0; i < n; i++) {
            double x = (instants[i] - middle) / half;
            double ahead = law[0] + x * (law[1] + x * law[2]) - (angle(edges, first + i) - middleTurns);
            misses[i] = ahead / ((law[1] + 2 * x * law[2]) / half);
            squares += misses[i] * misses[i];
            worst = Math.abs(misses[i]) > Math.abs(misses[worst]) ? i : worst;
        }
        return new EdgeTiming(Math.sqrt(squares / n), Math.abs(misses[worst]), instants[worst],
                (law[1] - 2 * law[2]) / half, (law[1] + 2 * law[2]) / half, first, Double.NaN, misses);
    }

    private static double angle(double[] edges, int count) {
        return edges[count % edges.length] + count / edges.length;
    }
}
