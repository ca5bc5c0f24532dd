package understudy.audio;

import java.util.Arrays;
import understudy.wave.VoltSource;

/**
 * Keeps a line filled with a source's signal: the loop of the playing thread, and all that it publishes.
 *
 * <p>One thread runs {@link #run}, and it alone writes what the getters give to any thread. Once playing it MUST NOT
 * allocate, lock, log or format; it MAY wait in the line's write and for a millisecond between looks.
 *
 * <p>The line is filled up to the target before it starts: a sound server that starts empty runs dry at once, and
 * from then on tells a queue that is shorter than the true one by what it had asked for (seen with PulseAudio 16).
 */
final class LineWriter {

    /** What the thread is at; tells a hanging source from a hanging device. */
    enum Phase {
        WAITING,
        RENDERING,
        WRITING
    }

    /** The device took nothing, again and again. */
    static final class LineFailed extends Exception {
        LineFailed(String message) {
            super(message);
        }
    }

    private static final long LOOK_NANOS = 1_000_000;
    private static final long STUCK_NANOS = 20_000_000;
    private static final long RETRY_NANOS = 10_000_000;
    /** Half a second: a failed device does not come back by itself, a hiccup is over sooner. */
    private static final int RETRIES = 50;
    /** Zeros that the device takes before it is stopped, since some servers take that much ahead of what they play. */
    private static final double TAIL_SECONDS = 0.1;
    private static final double PEAK_SECONDS = 0.1;

    private final VoltSource source;
    private final OutputStage stage;
    private final OutputLine line;
    private final Clock clock;
    private final CollectorClock collector = new CollectorClock();
    private final GapWatch gaps;
    private final int rateHz;
    private final int lookFrames;
    private final double[][] volts;
    private final byte[] bytes;

    private long lookNanos;
    private long takenNanos;
    private long givenFrames;
    private long signalFrames;
    /** Where the fade out begins, and once it has begun, where it ends. */
    private long turnFrame;
    private boolean fading;
    private boolean over;
    private int gapsSeen;
    private double runningPeak;
    private long peakSinceFrame;

    private volatile boolean stopAsked;
    private volatile boolean abandoned;
    private volatile Phase phase = Phase.WAITING;
    private volatile long progressNanos;
    private volatile long takenFrames;
    private volatile int queuedFrames;
    private volatile int targetFrames;
    private volatile long signalEndFrame = Long.MAX_VALUE;
    private volatile double recentPeak;
    private volatile double peak;
    private volatile long clippedSamples;
    private volatile Throwable fault;

    /**
     * @param totalFrames how much to play, fades included; {@link Long#MAX_VALUE} for ever
     */
    LineWriter(VoltSource source, OutputStage stage, OutputLine line, Clock clock, int targetFrames, long totalFrames) {
        this.source = source;
        this.stage = stage;
        this.line = line;
        this.clock = clock;
        this.rateHz = source.rateHz();
        this.lookFrames = Math.max(1, rateHz / 1000);
        this.gaps = new GapWatch(rateHz);
        this.targetFrames = Math.min(targetFrames, line.capacityFrames());
        this.turnFrame = Math.max(0, totalFrames - stage.fadeFrames());
        this.volts = new double[source.channels()][line.capacityFrames()];
        this.bytes = new byte[line.capacityFrames() * stage.frameBytes()];
        this.progressNanos = clock.nanos();
    }

    /**
     * Plays until the signal is over or was asked to stop, and has been followed by silence.
     *
     * @throws LineFailed when the device takes no more
     */
    void run() throws LineFailed {
        stage.fadeIn();
        lookNanos = clock.nanos();
        fill(targetFrames);
        line.start();
        takenNanos = clock.nanos();
        gaps.begin(takenNanos, collector.haltedMillis());
        while (!abandoned && takenFrames < tailEnd()) {
            look();
            int room = (stuck() ? line.capacityFrames() : targetFrames) - queuedFrames;
            if (room >= lookFrames) {
                fill(room);
            } else {
                clock.pause(LOOK_NANOS);
            }
        }
    }

    /**
     * The device has missed its turn. Having run dry, a sound server may wait until its whole buffer is full
     * (seen with PulseAudio 16, when a few frames were left); what that is more than the target drains away again.
     */
    private boolean stuck() {
        return lookNanos - takenNanos > Math.max(STUCK_NANOS, 2 * gaps.nanos(gaps.stepFrames()));
    }

    private long tailEnd() {
        return over ? signalFrames + (long) (TAIL_SECONDS * rateHz) : Long.MAX_VALUE;
    }

    private void look() {
        long nowNanos = clock.nanos();
        lookNanos = nowNanos;
        // The line may tell too few or too many: never more than given, never fewer than before.
        long taken = Math.max(takenFrames, Math.min(givenFrames, givenFrames - line.queuedFrames()));
        if (taken > takenFrames) {
            takenNanos = nowNanos;
            progressNanos = nowNanos;
        }
        takenFrames = taken;
        queuedFrames = (int) (givenFrames - taken);
        if (gaps.observe(nowNanos, taken, queuedFrames, collector.haltedMillis()) && !over) {
            stage.rampIn();
        }
        if (gaps.count() > gapsSeen) {
            gapsSeen = gaps.count();
            if (gaps.lastWasStarved()) {
                targetFrames = Math.min(line.capacityFrames(), targetFrames + Math.max(lookFrames, gaps.stepFrames()));
            }
        }
    }

    private void fill(int frames) throws LineFailed {
        int wanted = Math.min(frames, line.capacityFrames());
        while (wanted > 0 && !abandoned) {
            int block = over ? packSilence(wanted) : packSignal(wanted);
            phase = Phase.WRITING;
            write(block * stage.frameBytes());
            phase = Phase.WAITING;
            wanted -= block;
        }
    }

    /** Renders and packs up to {@code wanted} frames, fewer where a fade begins or ends. */
    private int packSignal(int wanted) {
        if (!fading && (stopAsked || signalFrames >= turnFrame)) {
            fading = true;
            turnFrame = signalFrames + stage.fadeFrames();
            stage.fadeOut();
        }
        int block = (int) Math.min(wanted, turnFrame - signalFrames);
        phase = Phase.RENDERING;
        try {
            source.render(volts, block);
        } catch (Throwable thrown) {
            fault = thrown;
            end();
            return packSilence(block);
        }
        if (clock.nanos() - lookNanos > gaps.nanos(queuedFrames + gaps.stepFrames())) {
            stage.rampIn(); // So long ago that the device must have run out meanwhile.
        }
        stage.pack(volts, block, bytes);
        signalFrames += block;
        publishPeak();
        if (stage.silent()) {
            end();
        }
        return block;
    }

    private void end() {
        over = true;
        signalEndFrame = signalFrames;
    }

    private int packSilence(int frames) {
        Arrays.fill(bytes, 0, frames * stage.frameBytes(), (byte) 0);
        return frames;
    }

    private void publishPeak() {
        runningPeak = Math.max(runningPeak, stage.blockPeak());
        if (signalFrames - peakSinceFrame >= PEAK_SECONDS * rateHz) {
            recentPeak = runningPeak;
            runningPeak = 0;
            peakSinceFrame = signalFrames;
        }
        peak = stage.peak();
        clippedSamples = stage.clippedSamples();
    }

    private void write(int length) throws LineFailed {
        int done = 0;
        for (int tries = 0; done < length && !abandoned; tries++) {
            int part = line.write(bytes, done, length - done);
            if (part > 0) {
                done += part;
                givenFrames += part / stage.frameBytes();
                queuedFrames += part / stage.frameBytes();
                progressNanos = clock.nanos();
                tries = 0;
            }
            if (done < length) {
                if (tries == RETRIES) {
                    throw new LineFailed("it took no more samples");
                }
                clock.pause(RETRY_NANOS);
            }
        }
    }

    /** From the next block on fades out and ends. */
    void stop() {
        stopAsked = true;
    }

    /** The line has been given up: return as soon as possible. */
    void abandon() {
        abandoned = true;
    }

    boolean stopWasAsked() {
        return stopAsked;
    }

    Phase phase() {
        return phase;
    }

    /** When samples last went out, on the clock. */
    long progressNanos() {
        return progressNanos;
    }

    /** Frames of signal that the device has taken. */
    long playedFrames() {
        return Math.min(takenFrames, signalEndFrame);
    }

    int queuedFrames() {
        return queuedFrames;
    }

    int targetFrames() {
        return targetFrames;
    }

    double recentPeak() {
        return recentPeak;
    }

    double peak() {
        return peak;
    }

    long clippedSamples() {
        return clippedSamples;
    }

    /** What the source threw, or null. */
    Throwable fault() {
        return fault;
    }

    GapWatch gaps() {
        return gaps;
    }
}
