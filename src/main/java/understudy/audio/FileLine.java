package understudy.audio;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import understudy.refusal.Refused;

/**
 * A line into a WAV file, at the pace of a silent one; the file appears when the line is closed. The audio writer only
 * copies into a ring; a thread of the line's own writes to the disk, which may take its time.
 */
final class FileLine implements OutputLine {

    /** Half a minute of two channels at 48 kHz; a power of two, so that a position in the ring is a mask. */
    private static final int RING_BYTES = 1 << 23;
    private static final int MOST_AT_ONCE = 1 << 16;
    /** A slow disk gets this long for what is left at the end. */
    private static final Duration PATIENCE = Duration.ofMinutes(1);
    private static final long LOOK_NANOS = TimeUnit.MILLISECONDS.toNanos(5);

    private final SilentLine pace;
    private final Sink file;
    private final Duration patience;
    private final byte[] ring = new byte[RING_BYTES];
    private final Thread disk = new Thread(this::writeToDisk, "audio-file");
    /** Bytes put into the ring since the start; only the audio writer changes it. */
    private volatile long given;
    /** Bytes on the disk; only the disk's thread changes it. */
    private volatile long written;
    private volatile boolean closing;
    private volatile String failure;

    /** A file in the making; it appears when it is committed, and is removed when it is closed before. */
    interface Sink {
        Path target();

        /** @throws Refused when the disk does not take it */
        void write(byte[] bytes, int offset, int length);

        void commit();

        void close();
    }

    FileLine(SilentLine pace, Sink file) {
        this(pace, file, PATIENCE);
    }

    FileLine(SilentLine pace, Sink file, Duration patience) {
        this.pace = pace;
        this.file = file;
        this.patience = patience;
        disk.setDaemon(true);
        disk.start();
    }

    @Override
    public int capacityFrames() {
        return pace.capacityFrames();
    }

    @Override
    public int queuedFrames() {
        return pace.queuedFrames();
    }

    /** Copies and returns: no lock, no wait for the disk. */
    @Override
    public int write(byte[] bytes, int offset, int length) {
        if (failure != null || closing) {
            return 0;
        }
        if (pendingBytes() + length > RING_BYTES) {
            failure = file.target() + ": the disk takes less than the signal brings; nothing was kept; use another disk";
            return 0;
        }
        int taken = pace.write(bytes, offset, length);
        int at = (int) (given & RING_BYTES - 1);
        int first = Math.min(taken, RING_BYTES - at);
        System.arraycopy(bytes, offset, ring, at, first);
        System.arraycopy(bytes, offset + first, ring, 0, taken - first);
        given += taken; // published after the bytes
        return taken;
    }

    /** Given, and not on the disk yet. */
    long pendingBytes() {
        return given - written;
    }

    private void writeToDisk() {
        try {
            while (failure == null) {
                boolean last = closing; // asked before the ring, so that nothing given before is left in it
                int ready = (int) Math.min(pendingBytes(), MOST_AT_ONCE);
                if (ready > 0) {
                    int at = (int) (written & RING_BYTES - 1);
                    int some = Math.min(ready, RING_BYTES - at);
                    file.write(ring, at, some);
                    written += some;
                } else if (last) {
                    file.commit();
                    return;
                } else {
                    Clock.SYSTEM.pause(LOOK_NANOS);
                }
            }
        } catch (Refused e) {
            failure = e.getMessage();
        } finally {
            file.close();
        }
    }

    @Override
    public void start() {
        pace.start();
    }

    @Override
    public void stop() {
        pace.stop();
    }

    @Override
    public void flush() {
        pace.flush();
    }

    /** Returns when all that was given is on the disk and the file is in its place, or has failed. */
    @Override
    public void close() {
        pace.close();
        closing = true;
        try {
            disk.join(patience.toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        if (disk.isAlive()) {
            // the disk's thread sees it and removes what there is of the file
            failure = file.target() + ": the disk did not take the file in time; nothing was kept; use another disk";
        }
    }

    /** Longer than {@link #close} itself waits, which then says why. */
    @Override
    public Duration patience() {
        return patience.plus(LineCloser.PATIENCE);
    }

    @Override
    public Optional<String> failure() {
        return Optional.ofNullable(failure);
    }
}
