package understudy.audio;

import java.time.Duration;

/** Ends a line on a thread that may be lost: with a frozen sound server flush and close never return. */
final class LineCloser {

    static final Duration PATIENCE = Duration.ofSeconds(2);

    private LineCloser() {}

    /**
     * Stops and closes the line, or gives it up after two seconds.
     *
     * @return true when it closed
     */
    static boolean close(OutputLine line) {
        Thread closing = new Thread(() -> {
            line.stop();
            line.flush();
            line.close();
        }, "audio-closer");
        closing.setDaemon(true);
        closing.start();
        try {
            closing.join(PATIENCE.toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return !closing.isAlive();
    }
}
