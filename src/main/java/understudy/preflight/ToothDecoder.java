package understudy.preflight;

import java.util.Arrays;

/**
 * Finds teeth and gap in a row of instants, as a module does that knows its wheel: by the lengths of the intervals, each
 * within {@value #WITHIN_PITCHES} of a tooth pitch of what the geometry says. A gap with swapped wires is off by half a
 * pitch and more (two of 1.5 pitches instead of one of 2, two of 2 instead of one of 3), so nothing but the right row
 * passes.
 */
final class ToothDecoder {
    static final double WITHIN_PITCHES = 0.25;
    /** In the mean, of the events of a turn: a missed tooth once in a hundred is a missed tooth. */
    private static final double SAME_COUNT = 0.005;

    private final CycleEvents events;
    private final double speedHz;
    private final double cycleHz;
    private final double lagSeconds;

    /** @param lagSeconds by which the circuit delays a sine of the teeth's frequency */
    ToothDecoder(CycleEvents events, double speedHz, double lagSeconds) {
        this.events = events;
        this.speedHz = speedHz;
        this.cycleHz = events.cycleHz(speedHz);
        this.lagSeconds = lagSeconds;
    }

    /**
     * What was found.
     *
     * @param perTurn events counted for one turn of the speed
     * @param meanLateCycles by how much the events come late, in the mean; NaN unless decoded or swapped
     * @param worstLateCycles of the event furthest from its place
     */
    record Found(DecodingVerdict verdict, double perTurn, double meanLateCycles, double worstLateCycles) {}

    /** @param seconds ascending, over at least a cycle and one event more */
    Found judge(double[] seconds, double spanSeconds) {
        int n = events.timing().length;
        double perCycle = perCycle(seconds, spanSeconds);
        double perTurn = perCycle * events.perTurn() / n;
        if (seconds.length == 0) {
            return new Found(DecodingVerdict.SILENT, 0, Double.NaN, Double.NaN);
        }
        if (seconds.length < n + 1 || Math.abs(perCycle - n) > SAME_COUNT * n) {
            return new Found(DecodingVerdict.MISCOUNTED, perTurn, Double.NaN, Double.NaN);
        }
        double[] right = late(seconds, events.timing());
        boolean swapped = isNearerToOpposite(seconds);
        if (right == null && !swapped) {
            return new Found(DecodingVerdict.OUT_OF_STEP, perTurn, Double.NaN, Double.NaN);
        }
        double[] wrong = swapped ? late(seconds, events.opposite()) : null;
        double[] late = swapped ? wrong : right; // told from where the edges belong
        // either way round a plain ring is the same
        DecodingVerdict verdict = swapped && !(events.plainRing() && wrong != null) ? DecodingVerdict.SWAPPED : DecodingVerdict.DECODED;
        return new Found(verdict, perTurn, late == null ? Double.NaN : mean(late), late == null ? Double.NaN : worst(late));
    }

    /** Counted over as many whole cycles as fit, ending between two events, where none can slip in or out. */
    private double perCycle(double[] seconds, double spanSeconds) {
        int m = seconds.length;
        double cycles = m < 2 ? 0 : Math.floor((seconds[m - 1] - seconds[0]) * cycleHz);
        if (cycles < 1) {
            return m / (spanSeconds * cycleHz);
        }
        double to = 0.5 * (seconds[m - 2] + seconds[m - 1]);
        double from = to - cycles / cycleHz;
        return Arrays.stream(seconds).filter(at -> at > from && at <= to).count() / cycles;
    }

    /** How late each event comes, in cycles, if the row fits these places; else null. */
    private double[] late(double[] seconds, double[] places) {
        double[] lengths = CycleEvents.intervals(places);
        double within = WITHIN_PITCHES * events.shortestCycles();
        double[] best = null;
        for (int first = 0; first < places.length; first++) {
            if (fits(seconds, lengths, first, within)) {
                double[] late = lateFrom(seconds, places, first);
                best = best == null || Math.abs(mean(late)) < Math.abs(mean(best)) ? late : best;
            }
        }
        return best;
    }

    private static boolean fits(double[] seconds, double[] lengths, int first, double within) {
        int n = lengths.length;
        for (int j = 0; j + 1 < seconds.length; j++) {
            // a module has no other clock than the turn itself; at the end, the last whole turn
            int from = Math.min(j, seconds.length - 1 - n);
            double turn = seconds[from + n] - seconds[from];
            double length = (seconds[j + 1] - seconds[j]) / turn;
            if (n > 1 && Math.abs(length - lengths[(first + j) % n]) > within) {
                return false;
            }
        }
        return n > 1 || even(seconds, within);
    }

    /** One event a cycle: neighbouring intervals must be alike. */
    private static boolean even(double[] seconds, double within) {
        double mean = (seconds[seconds.length - 1] - seconds[0]) / (seconds.length - 1);
        for (int j = 0; j + 1 < seconds.length; j++) {
            if (Math.abs((seconds[j + 1] - seconds[j]) / mean - 1) > within) {
                return false;
            }
        }
        return true;
    }

    /**
     * Whether most events lie nearer to a transition that goes the other way, what the circuit delays them by left aside.
     * Then it is no use that the gap may seem to fit, where thresholds shift the edges on its slow slope.
     */
    private boolean isNearerToOpposite(double[] seconds) {
        int nearer = 0;
        double base = events.seconds(0, 0, speedHz) + lagSeconds;
        for (double at : seconds) {
            double cycles = (at - base) * cycleHz;
            nearer += distance(cycles, events.opposite()) < distance(cycles, events.timing()) ? 1 : 0;
        }
        return 2 * nearer > seconds.length;
    }

    private static double distance(double cycles, double[] places) {
        double least = 1;
        for (double place : places) {
            least = Math.min(least, Math.abs(cycles - place - Math.rint(cycles - place)));
        }
        return least;
    }

    private double[] lateFrom(double[] seconds, double[] places, int first) {
        double[] late = new double[seconds.length];
        double base = events.seconds(0, 0, speedHz);
        for (int j = 0; j < late.length; j++) {
            double cycles = (seconds[j] - base) * cycleHz - places[(first + j) % places.length];
            late[j] = cycles - Math.rint(cycles);
        }
        return late;
    }

    private static double mean(double[] values) {
        return Arrays.stream(values).average().orElse(Double.NaN);
    }

    private static double worst(double[] values) {
        double worst = 0;
        for (double value : values) {
            worst = Math.abs(value) > Math.abs(worst) ? value : worst;
        }
        return worst;
    }
}
