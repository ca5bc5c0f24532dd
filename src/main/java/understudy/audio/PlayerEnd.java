package understudy.audio;

/** How playing ended. In every case the output is silent. */
public sealed interface PlayerEnd {

    /** The asked duration was played to its end. */
    record Finished() implements PlayerEnd {}

    /** Somebody asked to stop, and it faded out. */
    record Stopped() implements PlayerEnd {}

    /** The device is gone or takes no more; {@code reason} says what was seen and what to do. */
    record Lost(String reason) implements PlayerEnd {}

    /** The program failed: a defect. */
    record Fault(Throwable cause) implements PlayerEnd {}
}
