package understudy.audio;

import java.io.ByteArrayOutputStream;

/** A clock and a device that takes samples in steps of it: time passes only while somebody waits, or is told to. */
final class FakeDevice implements OutputLine, Clock {

    final ByteArrayOutputStream given = new ByteArrayOutputStream();
    long givenBeforeStart = -1;
    int mostQueuedFrames;
    long nowNanos = 1_000_000_000_000L;
    /** Having run dry, takes nothing until the buffer is full. */
    boolean waitsUntilFull;
    /** From now on takes nothing and lets nothing in. */
    boolean dead;

    private final int rateHz;
    private final int frameBytes;
    private final int stepFrames;
    private final int capacityFrames;
    private long startNanos = -1;
    private long steps;
    private long takenFrames;
    private long givenFrames;
    private boolean dry;
    int dryCount;

    FakeDevice(int rateHz, int frameBytes, int stepFrames, int capacityFrames) {
        this.rateHz = rateHz;
        this.frameBytes = frameBytes;
        this.stepFrames = stepFrames;
        this.capacityFrames = capacityFrames;
    }

    @Override
    public long nanos() {
        return nowNanos;
    }

    @Override
    public void pause(long nanos) {
        nowNanos += nanos;
        take();
    }

    void pass(long nanos) {
        pause(nanos);
    }

    private void take() {
        if (startNanos < 0 || dead) {
            return;
        }
        long due = (nowNanos - startNanos) * rateHz / 1_000_000_000L / stepFrames;
        for (; steps < due; steps++) {
            if (dry && waitsUntilFull && givenFrames - takenFrames < capacityFrames) {
                continue;
            }
            dry = givenFrames - takenFrames < stepFrames;
            if (dry) {
                dryCount++;
            }
            takenFrames = Math.min(givenFrames, takenFrames + stepFrames);
        }
    }

    @Override
    public int capacityFrames() {
        return capacityFrames;
    }

    @Override
    public int queuedFrames() {
        return (int) (givenFrames - takenFrames);
    }

    @Override
    public int write(byte[] bytes, int offset, int length) {
        if (dead) {
            return 0;
        }
        int frames = Math.min(length / frameBytes, capacityFrames - queuedFrames());
        given.write(bytes, offset, frames * frameBytes);
        givenFrames += frames;
        mostQueuedFrames = Math.max(mostQueuedFrames, queuedFrames());
        return frames * frameBytes;
    }

    @Override
    public void start() {
        givenBeforeStart = givenFrames;
        startNanos = nowNanos;
    }

    @Override
    public void stop() {}

    @Override
    public void flush() {}

    @Override
    public void close() {}
}
