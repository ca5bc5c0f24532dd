package understudy.audio;

import java.time.Duration;

/** Ends a line on a thread that may be lost: with a frozen sound server flush and close never return. */
final class LineCloser {

    static final Duration PATIENCE = Duration.ofSeconds(2);

    private LineCloser() {}

    /**
     * Does what ends the line, or gives the line up.
     *
     * @param ending   stops, flushes and closes
     * @param patience how long that may take
     * @return true when that came to its end
     */
    static boolean close(Runnable ending, Duration patience) {
        Thread closing = new Thread(ending, "audio-closer");
        closing.setDaemon(true);
        closing.start();
        try {
            closing.join(patience.toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return !closing.isAlive();
    }
}
