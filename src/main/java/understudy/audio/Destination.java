package understudy.audio;

/** Where a player plays to. */
public sealed interface Destination permits DeviceChoice, Silent, SoundFile {

    int rateHz();

    /** Channels of the line: at least those of the source; the rest are silent. */
    int channels();
}
