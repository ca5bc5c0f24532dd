package understudy.audio;

/**
 * A gap in what a device played.
 *
 * @param atSeconds    when it ended, in seconds since the line started
 * @param lengthMillis how long nothing of the signal was played
 * @param cause        most likely
 */
public record Underrun(double atSeconds, double lengthMillis, Cause cause) {

    /** Why the device had nothing to play. */
    public enum Cause {
        /** The program did not get to write in time: the machine was busy. */
        WRITER_LATE,
        /** The device took more at once than was queued. */
        QUEUE_TOO_SHORT,
        /** The Java memory collector halted the program. */
        COLLECTOR,
        /** The sound system stopped taking samples though there were some. */
        SINK_STALLED
    }
}
