package understudy.audio;

/**
 * What a player is doing: one immutable snapshot of what its writer thread publishes.
 *
 * @param state           now
 * @param framesPlayed    frames of signal that the device has taken
 * @param secondsPlayed   the same in seconds
 * @param underruns       gaps so far
 * @param queuedMillis    waiting at the device
 * @param targetMillis    what the queue is kept at: the latency; rises by a step after each underrun
 * @param peakOfFullScale largest fraction of full scale in the last tenth of a second; above 1 is held at 1
 * @param clippedSamples  samples held at full scale so far
 */
public record PlayerStatus(
        State state,
        long framesPlayed,
        double secondsPlayed,
        int underruns,
        double queuedMillis,
        double targetMillis,
        double peakOfFullScale,
        long clippedSamples) {

    /** A player goes from top to bottom, and between the second and third as often as the device makes it. */
    public enum State {
        READY,
        PLAYING,
        /** The device has taken nothing for a second. */
        STALLED,
        /** Fading out. */
        STOPPING,
        ENDED
    }
}
