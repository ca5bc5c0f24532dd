package understudy.audio;

import javax.sound.sampled.AudioFormat;

/**
 * A device and the format to open it with, as {@link Devices#choose} found it to open.
 *
 * @param device    an output
 * @param rateHz    frames a second
 * @param channels  of the line
 * @param format    of a sample
 * @param bigEndian byte order of a sample
 * @param listed    the system names this format as the device's own; if not, it may convert on the way
 */
public record DeviceChoice(
        Device device, int rateHz, int channels, SampleFormat format, boolean bigEndian, boolean listed)
        implements Destination {

    AudioFormat audioFormat() {
        return new AudioFormat(AudioFormat.Encoding.PCM_SIGNED, rateHz, format.bits(), channels,
                channels * format.bytes(), rateHz, bigEndian);
    }
}
