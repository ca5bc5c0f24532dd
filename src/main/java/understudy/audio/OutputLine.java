package understudy.audio;

import java.time.Duration;
import java.util.Optional;

/**
 * What the writer needs of a way out: a real line or a silent one. One thread, the writer, calls everything but
 * {@link #stop}, {@link #flush} and {@link #close}.
 */
interface OutputLine {

    int capacityFrames();

    /** Frames given and not yet taken by the device; a hint only: it may be off, or stand still. */
    int queuedFrames();

    /**
     * Hands over {@code length} bytes from {@code offset}, whole frames. Before {@link #start} it takes what fits and
     * returns at once; after, it may block.
     *
     * @return bytes taken; fewer than given, and 0, when the device has failed
     */
    int write(byte[] bytes, int offset, int length);

    void start();

    /** Ends playing and frees a blocked {@link #write}; safe from any thread. */
    void stop();

    /** Forgets what is queued. May hang when the sound server does. */
    void flush();

    /** May hang when the sound server does. */
    void close();

    /** How long {@link #stop}, {@link #flush} and {@link #close} together may take before the line is given up. */
    default Duration patience() {
        return LineCloser.PATIENCE;
    }

    /** Why it takes no more, in words for the user, when the line itself knows; any thread. */
    default Optional<String> failure() {
        return Optional.empty();
    }
}
