package understudy.measure;

import java.util.Arrays;
import understudy.motion.Motion;
import understudy.pattern.Profile;

/**
 * When each edge of an output comes while a profile plays, by the exact motion and not by samples: the timetable that a
 * recording is held against. Nobody's hand on the speed, no faults.
 *
 * @param seconds  of each edge, from the start of the profile, rising order
 * @param rising   whether upwards
 * @param speedsHz there: turns of the pattern's speed per second
 */
record Program(double[] seconds, boolean[] rising, double[] speedsHz) {

    /** An hour of a busy wheel; what comes later is not looked for. */
    private static final int MOST_EDGES = 5_000_000;
    /** Any rate will do: instants lie between frames. */
    private static final int RATE_HZ = 48_000;

    /**
     * @param startHz       turns per second where the profile does not say
     * @param cyclesPerTurn of the output, above 0
     * @param lateTurns     by which it comes later than drawn
     * @param risingCycles  where in a cycle its positive-going edges lie, 0 to below 1; may be none
     * @param fallingCycles likewise negative-going
     * @param lastSeconds   how far to go
     */
    static Program of(Profile profile, double startHz, double cyclesPerTurn, double lateTurns, double[] risingCycles,
            double[] fallingCycles, double lastSeconds) {
        int perCycle = risingCycles.length + fallingCycles.length;
        double[][] places = new double[perCycle][];
        for (int k = 0; k < perCycle; k++) {
            boolean up = k < risingCycles.length;
            places[k] = new double[] {up ? risingCycles[k] : fallingCycles[k - risingCycles.length], up ? 1 : 0};
        }
        Arrays.sort(places, (a, b) -> Double.compare(a[0], b[0]));
        double[] seconds = new double[1024];
        boolean[] rising = new boolean[1024];
        double[] speeds = new double[1024];
        int count = 0;
        Motion motion = new Motion(profile, startHz, RATE_HZ);
        long cycle = (long) Math.floor(-lateTurns * cyclesPerTurn);
        int next = 0;
        while (motion.startFrame() < lastSeconds * RATE_HZ && count < MOST_EDGES) {
            motion.advance(Double.NaN);
            double turns = (cycle + places[next][0]) / cyclesPerTurn + lateTurns - motion.baseTurn();
            while (turns < motion.windowEndTurns()) {
                if (turns >= motion.windowStartTurns()) {
                    if (count == seconds.length) {
                        seconds = Arrays.copyOf(seconds, 2 * count);
                        rising = Arrays.copyOf(rising, 2 * count);
                        speeds = Arrays.copyOf(speeds, 2 * count);
                    }
                    double frame = motion.frameAt(turns);
                    seconds[count] = (motion.startFrame() + frame) / RATE_HZ;
                    rising[count] = places[next][1] == 1;
                    speeds[count++] = motion.speedAtFrame(frame) * RATE_HZ;
                }
                if (++next == perCycle) {
                    next = 0;
                    cycle++;
                }
                turns = (cycle + places[next][0]) / cyclesPerTurn + lateTurns - motion.baseTurn();
            }
        }
        return new Program(Arrays.copyOf(seconds, count), Arrays.copyOf(rising, count), Arrays.copyOf(speeds, count));
    }
}
