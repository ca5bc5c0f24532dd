package understudy.measure;

import understudy.refusal.Refused;

/**
 * How far the edges of a recording lie from where a {@link Program} puts them. Where in the program the recording begins
 * is found by trying every edge; delay and clock are fitted by least squares, and what remains of each edge is its miss.
 */
final class ProgramTiming {

    /** Edges that decide where the recording begins, evenly spread over it. */
    private static final int EDGES_TO_ALIGN = 64;
    /** Two clocks differ by 200 ppm at most; a program that fits only when stretched by more is another one. */
    private static final double MOST_CLOCK_PART = 1e-3;
    /** A miss by more than this part of the mean interval is no timing noise. */
    private static final double MOST_MISS = 0.25;
    private static final int LEAST_EDGES = 4;

    private final double[] instants;
    private final boolean[] rising;
    private final Program program;

    private ProgramTiming(Crossings crossings, double rateHz, Program program) {
        this.instants = java.util.Arrays.stream(crossings.frames()).map(frame -> frame / rateHz).toArray();
        this.rising = crossings.rising();
        this.program = program;
    }

    /**
     * @param crossings of the recording, none missing; of those directions that the program has
     * @throws Refused if they are too few, or don't follow the program
     */
    static EdgeTiming of(Crossings crossings, double rateHz, Program program) {
        return new ProgramTiming(crossings, rateHz, program).timing();
    }

    private EdgeTiming timing() {
        int n = instants.length;
        if (n < LEAST_EDGES) {
            throw new Refused("edge timing needs at least " + LEAST_EDGES + " edges, got " + n, "record longer");
        }
        int most = Math.min(EDGES_TO_ALIGN, n);
        int[] some = new int[most];
        for (int k = 0; k < most; k++) {
            some[k] = (int) ((long) k * (n - 1) / (most - 1));
        }
        int best = -1;
        double bestSquares = Double.POSITIVE_INFINITY;
        for (int first = 0; first + n <= program.seconds().length; first++) {
            if (program.rising()[first] == rising[0]) {
                double[] fit = fitted(some, first);
                if (fit[2] < bestSquares && Math.abs(fit[1] - 1) < MOST_CLOCK_PART) {
                    best = first;
                    bestSquares = fit[2];
                }
            }
        }
        if (best < 0) {
            throw new Refused("the edges of this recording follow this profile nowhere", "check the pattern, the profile and"
                    + " the speed, and that nobody changed the speed meanwhile");
        }
        return missed(best);
    }

    private EdgeTiming missed(int first) {
        int n = instants.length;
        int[] all = java.util.stream.IntStream.range(0, n).toArray();
        double[] fit = fitted(all, first);
        double meanInterval = (instants[n - 1] - instants[0]) / (n - 1);
        double[] misses = new double[n];
        double squares = 0;
        int worst = 0;
        for (int i = 0; i < n; i++) {
            misses[i] = instants[i] - fit[0] - fit[1] * (program.seconds()[first + i] - program.seconds()[first]);
            squares += misses[i] * misses[i];
            worst = Math.abs(misses[i]) > Math.abs(misses[worst]) ? i : worst;
        }
        if (Math.abs(misses[worst]) > MOST_MISS * meanInterval) {
            throw new Refused("edge " + (worst + 1) + " at " + SampleCheck.seconds(instants[worst]) + " lies "
                    + SampleCheck.seconds(misses[worst]) + " from where this profile puts it", "check the pattern, the profile"
                    + " and the speed, that no edge is missing, and that nobody changed the speed meanwhile");
        }
        return new EdgeTiming(Math.sqrt(squares / n), Math.abs(misses[worst]), instants[worst],
                program.speedsHz()[first], program.speedsHz()[first + n - 1], first, fit[1], misses);
    }

    /** When the recording's first edge came, its clock against the program's, and the mean squared miss. */
    private double[] fitted(int[] edges, int first) {
        double start = program.seconds()[first];
        double sumX = 0;
        double sumY = 0;
        for (int i : edges) {
            sumX += program.seconds()[first + i] - start;
            sumY += instants[i];
        }
        double meanX = sumX / edges.length;
        double meanY = sumY / edges.length;
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int i : edges) {
            double x = program.seconds()[first + i] - start - meanX;
            double y = instants[i] - meanY;
            xx += x * x;
            xy += x * y;
            yy += (y - x) * (y - x);
        }
        // the clock as its difference from 1, so that the squares don't cancel
        double off = (xy - xx) / xx;
        return new double[] {meanY - (1 + off) * meanX, 1 + off, (yy - off * off * xx) / edges.length};
    }
}
