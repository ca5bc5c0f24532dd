package understudy.audio;

/** A line that makes no sound and takes samples at the pace of a clock, counted in frames from its start. */
class SilentLine implements OutputLine {

    private static final long SECOND_NANOS = 1_000_000_000L;

    private final int rateHz;
    private final int frameBytes;
    private final int capacityFrames;
    private final Clock clock;

    private long framesGiven;
    private long framesTaken;
    private long paceFrame;
    private long paceNanos;
    private boolean running;

    SilentLine(int rateHz, int frameBytes, int capacityFrames, Clock clock) {
        this.rateHz = rateHz;
        this.frameBytes = frameBytes;
        this.capacityFrames = capacityFrames;
        this.clock = clock;
    }

    @Override
    public int capacityFrames() {
        return capacityFrames;
    }

    @Override
    public synchronized int queuedFrames() {
        take();
        return (int) (framesGiven - framesTaken);
    }

    @Override
    public synchronized int write(byte[] bytes, int offset, int length) {
        take();
        int frames = Math.min(length / frameBytes, capacityFrames - (int) (framesGiven - framesTaken));
        framesGiven += frames;
        return frames * frameBytes;
    }

    @Override
    public synchronized void start() {
        paceNanos = clock.nanos();
        paceFrame = framesTaken;
        running = true;
    }

    @Override
    public synchronized void stop() {
        take();
        running = false;
    }

    @Override
    public synchronized void flush() {
        framesTaken = framesGiven;
    }

    @Override
    public synchronized void close() {
        running = false;
    }

    private void take() {
        if (!running) {
            return;
        }
        long nanos = clock.nanos() - paceNanos;
        // Whole seconds apart, or the product would overflow within a day.
        long due = paceFrame + nanos / SECOND_NANOS * rateHz + nanos % SECOND_NANOS * rateHz / SECOND_NANOS;
        if (due > framesGiven) {
            // As a device does, it plays on into nothing; what comes later is played later.
            paceFrame = framesGiven;
            paceNanos += nanos;
            due = framesGiven;
        }
        framesTaken = Math.max(framesTaken, due);
    }
}
