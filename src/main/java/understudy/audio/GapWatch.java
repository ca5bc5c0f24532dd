package understudy.audio;

/**
 * Tells gaps in what a device plays from the only thing a line shows: how many frames it has taken, and when.
 *
 * <p>Single writer: the playing thread calls {@link #observe}; any thread reads the counts. Allocates nothing.
 *
 * <p>A device takes frames in steps. Lag is the clock less the time that the frames taken are worth; just after a
 * step it is least, and steady. In a gap the clock goes on and the frames do not, so that the lag comes out higher,
 * and stays there. The least lag of {@value #STEPS_TO_JUDGE} steps in a row is free of the odd late wake-up. A queue
 * seen empty, or left alone for longer than it lasts, says that we starved the device; otherwise the device stood
 * still.
 */
final class GapWatch {

    /** Kept in detail; beyond that gaps are only counted. */
    static final int KEPT = 1000;

    private static final int STEPS_TO_JUDGE = 4;
    /** Wake-ups come every millisecond: the least of four is well within two. */
    private static final long JITTER_NANOS = 2_000_000;
    /** A sound server may take up to 50 ms ahead, and change its mind about that; only more is a stall. */
    private static final long STALL_NANOS = 100_000_000;
    private static final long LATE_NANOS = 10_000_000;
    /** After a gap a server may tell nonsense for a look or two before it tells an empty queue. */
    private static final long BLAME_NANOS = 50_000_000;
    /** Clocks of devices differ from ours by far less than a thousandth. */
    private static final long DRIFT_PART = 1000;

    private final int rateHz;
    private final long[] atNanos = new long[KEPT];
    private final long[] lengthNanos = new long[KEPT];
    private final Underrun.Cause[] causes = new Underrun.Cause[KEPT];
    private volatile int count;
    private volatile long longestNanos;

    private boolean begun;
    private long startNanos;
    private long lastNanos;
    private long lastCollectorMillis;
    private long lateNanos;
    private boolean lateByCollector;
    private long lastTaken;
    private int lastQueued;
    private long stepNanos;
    private long baseLagNanos;
    private long leastLagNanos;
    private int stepsJudged;
    private boolean starved;
    private Underrun.Cause starvedBy;
    private boolean lastWasStarved;

    GapWatch(int rateHz) {
        this.rateHz = rateHz;
    }

    /** The line starts now. */
    void begin(long nowNanos, long collectorMillis) {
        begun = true;
        startNanos = nowNanos;
        lastNanos = nowNanos;
        lastQueued = Integer.MAX_VALUE;
        lateNanos = nowNanos - BLAME_NANOS - 1;
        lastCollectorMillis = collectorMillis;
        baseLagNanos = Long.MAX_VALUE;
        leastLagNanos = Long.MAX_VALUE;
    }

    /**
     * One look at the line, before anything is written.
     *
     * @param takenFrames     frames that the device has taken since {@link #begin}; never falls
     * @param queuedFrames    frames that it has still to take
     * @param collectorMillis time that the collector has halted the program so far
     * @return true when the device has surely run out, so that the signal should be ramped in again
     */
    boolean observe(long nowNanos, long takenFrames, int queuedFrames, long collectorMillis) {
        if (!begun) {
            return false;
        }
        long lagNanos = nowNanos - startNanos - nanos(takenFrames);
        if (nowNanos - lastNanos > LATE_NANOS) {
            lateNanos = nowNanos;
            lateByCollector = collectorMillis > lastCollectorMillis;
        }
        boolean ranOut = false;
        boolean heldTooLong = nowNanos - lastNanos > nanos(lastQueued);
        if ((queuedFrames == 0 || heldTooLong) && baseLagNanos != Long.MAX_VALUE) {
            ranOut = !starved && queuedFrames == 0 && lagNanos - baseLagNanos > stepNanos + JITTER_NANOS;
            starve(nowNanos);
        }
        lastQueued = queuedFrames;
        if (takenFrames > lastTaken) {
            step(nowNanos, takenFrames, lagNanos);
        }
        lastNanos = nowNanos;
        lastCollectorMillis = collectorMillis;
        return ranOut;
    }

    private void starve(long nowNanos) {
        if (!starved) {
            starved = true;
            starvedBy = nowNanos - lateNanos > BLAME_NANOS ? Underrun.Cause.QUEUE_TOO_SHORT
                    : lateByCollector ? Underrun.Cause.COLLECTOR
                    : Underrun.Cause.WRITER_LATE;
            stepsJudged = 0;
            leastLagNanos = Long.MAX_VALUE;
        }
    }

    private void step(long nowNanos, long takenFrames, long lagNanos) {
        long thisStep = nanos(takenFrames - lastTaken);
        // The usual step: rises to a larger one in a few, and forgets a single odd one.
        stepNanos += (thisStep - stepNanos) / 4;
        lastTaken = takenFrames;
        leastLagNanos = Math.min(leastLagNanos, lagNanos);
        if (++stepsJudged < STEPS_TO_JUDGE) {
            return;
        }
        if (baseLagNanos != Long.MAX_VALUE) {
            long rise = leastLagNanos - baseLagNanos;
            if (starved && rise > JITTER_NANOS) {
                keep(nowNanos, rise, starvedBy);
                baseLagNanos = leastLagNanos;
            } else if (rise > STALL_NANOS) {
                keep(nowNanos, rise, Underrun.Cause.SINK_STALLED);
                baseLagNanos = leastLagNanos;
            }
        }
        long mostDrift = STEPS_TO_JUDGE * stepNanos / DRIFT_PART;
        baseLagNanos = baseLagNanos == Long.MAX_VALUE
                ? leastLagNanos
                : Math.min(leastLagNanos, baseLagNanos + mostDrift);
        stepsJudged = 0;
        starved = false;
        leastLagNanos = Long.MAX_VALUE;
    }

    private void keep(long nowNanos, long nanos, Underrun.Cause cause) {
        int index = count;
        if (index < KEPT) {
            atNanos[index] = nowNanos - startNanos;
            lengthNanos[index] = nanos;
            causes[index] = cause;
        }
        lastWasStarved = cause != Underrun.Cause.SINK_STALLED;
        longestNanos = Math.max(longestNanos, nanos);
        count = index + 1;
    }

    long nanos(long frames) {
        return frames / rateHz * 1_000_000_000L + frames % rateHz * 1_000_000_000L / rateHz;
    }

    /** Frames that the device usually takes at once. */
    int stepFrames() {
        return (int) ((stepNanos * rateHz + 500_000_000L) / 1_000_000_000L);
    }

    /** The latest gap was one where we came too late, so that a longer queue would have helped. */
    boolean lastWasStarved() {
        return lastWasStarved;
    }

    int count() {
        return count;
    }

    double longestMillis() {
        return longestNanos / 1e6;
    }

    /** Gap {@code index}, 0 up to the lesser of {@link #count} and {@link #KEPT}. */
    Underrun underrun(int index) {
        return new Underrun(atNanos[index] / 1e9, lengthNanos[index] / 1e6, causes[index]);
    }
}
