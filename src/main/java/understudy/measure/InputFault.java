package understudy.measure;

/**
 * Something about a recording that would spoil what is measured in it.
 *
 * @param kind    what it is
 * @param channel counted from 1
 * @param message where, what was found, what is right, what to do
 */
public record InputFault(Kind kind, int channel, String message) {

    /** The conditions that have a name. */
    public enum Kind {
        /** Nothing but noise, or nothing at all, on every channel. */
        SILENT,
        /** Nothing on this channel, while another has a signal. */
        CHANNEL_DEAD,
        /** Samples stay at the end of the range. */
        CLIPPED,
        /** Hardly any room is left above the peaks. */
        TOO_HIGH,
        /** Most of the range lies idle, so noise weighs more than it must. */
        TOO_LOW,
        /** Lines at the mains frequency and its multiples. */
        HUM,
        /** It is shorter than what was played, or the signal stops on the way. */
        ENDS_EARLY
    }
}
