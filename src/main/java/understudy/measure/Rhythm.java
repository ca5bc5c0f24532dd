package understudy.measure;

import java.util.Arrays;

/**
 * After how many events a row of instants repeats, and how long each interval is in tooth pitches, whatever the speed
 * does meanwhile.
 *
 * <p>The ratio of neighbouring intervals tells gaps from speed: it leaps at a gap (by 1.5 or more) and drifts under
 * ramps and cranking ripple (by 1.1 between teeth 10 degrees apart). The row repeats after the least number of events
 * that brings leaps onto leaps. An interval's length is taken against the median of five around it, itself the third,
 * so that a steady change of speed cancels; then the median over all turns. If all come out near whole or half
 * pitches, the teeth stand on an even grid, and lengths are taken once more against a parabola through the pitches on
 * both sides, which follows cranking ripple too.
 *
 * @param events          of one turn; 0 when nothing repeats (an even ring, or too short a record)
 * @param intervals       in pitches, one turn long, the last the longest; empty when {@code events} is 0
 * @param first           index of an instant that begins such a turn
 * @param leaps           intervals that differ from the one before by more than a quarter
 */
record Rhythm(int events, double[] intervals, int first, int leaps) {

    /** ln 1.25: between what ripple does and what a reversed gap of 1.5 pitches does. */
    private static final double LEAP = Math.log(1.25);
    private static final int MOST_EVENTS = 300;
    /** Leaps may miss their like now and then, where a tooth is damaged or a contact flickers. */
    private static final double MOST_STRAYS = 0.25;
    private static final int AROUND = 2;
    /** Intervals within this of a whole or half number of pitches are taken to be it; from 2 pitches on, twice this. */
    private static final double ROUNDING = 0.1;

    static Rhythm of(double[] instants) {
        double[] intervals = Statistics.steps(instants);
        double[] ratios = Statistics.steps(Arrays.stream(intervals).map(Math::log).toArray());
        int leaps = (int) Arrays.stream(ratios).filter(q -> Math.abs(q) > LEAP).count();
        int events = leaps == 0 ? 0 : repeats(ratios);
        if (events == 0) {
            return new Rhythm(0, new double[0], 0, leaps);
        }
        double[] turn = turn(intervals, events);
        int longest = start(turn);
        double[] ordered = new double[events];
        for (int k = 0; k < events; k++) {
            ordered[k] = turn[(longest + k) % events];
        }
        return new Rhythm(events, ordered, longest, leaps);
    }

    /** Tooth places of one turn, gaps filled; 0 if the teeth stand on no even grid. */
    int places() {
        double sum = 0;
        for (double interval : intervals) {
            if (!isOnGrid(interval)) {
                return 0;
            }
            sum += halves(interval);
        }
        return sum == Math.rint(sum) ? (int) sum : 0;
    }


    private static int repeats(double[] ratios) {
        for (int events = 1; events <= MOST_EVENTS && 2 * events <= ratios.length; events++) {
            int leaps = 0;
            int strays = 0;
            for (int i = 0; i + events < ratios.length; i++) {
                double here = ratios[i];
                double next = ratios[i + events];
                if (Math.abs(here) > LEAP || Math.abs(next) > LEAP) {
                    leaps++;
                    strays += Math.abs(here - next) > LEAP ? 1 : 0;
                }
            }
            if (leaps >= 2 && strays <= MOST_STRAYS * leaps) {
                return events;
            }
        }
        return 0;
    }

    /** One turn in pitches, from the interval at index 0 on. */
    private static double[] turn(double[] intervals, int events) {
        double[] inPitches = new double[intervals.length];
        double[] near = new double[2 * AROUND + 1];
        for (int i = AROUND; i + AROUND < intervals.length; i++) {
            System.arraycopy(intervals, i - AROUND, near, 0, near.length);
            Arrays.sort(near);
            inPitches[i] = intervals[i] / near[AROUND];
        }
        double[] coarse = overAllTurns(inPitches, events);
        double[] places = Arrays.stream(coarse).map(Rhythm::halves).toArray();
        for (int i = AROUND; i + AROUND < intervals.length; i++) {
            inPitches[i] = intervals[i] / pitchAt(i, intervals, places);
        }
        double[] fine = overAllTurns(inPitches, events);
        return Arrays.stream(fine).allMatch(Rhythm::isOnGrid) ? fine : coarse;
    }

    private static double[] overAllTurns(double[] inPitches, int events) {
        double[] turn = new double[events];
        for (int k = 0; k < events; k++) {
            double[] same = new double[inPitches.length / events + 1];
            int count = 0;
            for (int i = k; i + AROUND < inPitches.length; i += events) {
                if (i >= AROUND) {
                    same[count++] = inPitches[i];
                }
            }
            Arrays.sort(same, 0, count);
            turn[k] = count == 0 ? 1 : 0.5 * (same[(count - 1) / 2] + same[count / 2]);
        }
        return turn;
    }

    /** A pitch's duration in the middle of interval i, from a parabola through the two intervals on either side. */
    private static double pitchAt(int i, double[] intervals, double[] places) {
        int events = places.length;
        double here = places[i % events];
        double before = places[(i - 1) % events];
        double after = places[(i + 1) % events];
        double further = (places[(i - 2) % events] + places[(i + 2) % events]) / 2;
        double near = (intervals[i - 1] / before + intervals[i + 1] / after) / 2;
        double far = (intervals[i - 2] / places[(i - 2) % events] + intervals[i + 2] / places[(i + 2) % events]) / 2;
        double toNear = (here + (before + after) / 2) / 2;
        double toFar = toNear + ((before + after) / 2 + further) / 2;
        return near + (near - far) * toNear * toNear / (toFar * toFar - toNear * toNear);
    }

    private static double halves(double interval) {
        return Math.max(0.5, Math.rint(2 * interval) / 2);
    }

    private static boolean isOnGrid(double interval) {
        return Math.abs(interval - halves(interval)) <= (halves(interval) < 2 ? ROUNDING : 2 * ROUNDING);
    }

    /** Where a turn begins: after the longest interval; among several as long, after the one that the most teeth follow. */
    private static int start(double[] turn) {
        double most = Arrays.stream(turn).max().orElseThrow();
        int best = 0;
        int bestRun = -1;
        for (int k = 0; k < turn.length; k++) {
            if (turn[k] < most - ROUNDING) {
                continue;
            }
            int run = 1;
            while (run < turn.length && turn[(k + run) % turn.length] < most - ROUNDING) {
                run++;
            }
            if (run > bestRun) {
                bestRun = run;
                best = (k + 1) % turn.length;
            }
        }
        return best;
    }
}
