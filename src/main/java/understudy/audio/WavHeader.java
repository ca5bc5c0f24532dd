package understudy.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * The bytes ahead of the samples of a WAV file: RIFF below 4 GiB, RF64 above.
 *
 * <p>A JUNK chunk keeps room for the ds64 chunk, so that a file that outgrows 4 GiB while it is written becomes RF64
 * without moving a sample (EBU Tech 3306 v1.1, 2009, section 4). Formats of more than two channels or more than 16 bits
 * are described as WAVE_FORMAT_EXTENSIBLE (Microsoft, "Multiple channel audio data and WAVE files", 2001).
 */
final class WavHeader {

    static final int CODE_PCM = 1;
    static final int CODE_FLOAT = 3;
    static final int CODE_EXTENSIBLE = 0xFFFE;
    static final long RIFF_LIMIT_BYTES = 0xFFFFFFFFL;
    static final int DS64_BYTES = 28;

    private static final int SPEAKER_CENTRE = 4;
    private static final int SPEAKERS_LEFT_RIGHT = 3;
    /** Channels are socket numbers, not places in a room. */
    private static final int NO_SPEAKERS = 0;

    private final int channels;
    private final int rateHz;
    private final SampleFormat format;

    WavHeader(int channels, int rateHz, SampleFormat format) {
        this.channels = channels;
        this.rateHz = rateHz;
        this.format = format;
    }

    /**
     * @param dataBytes      bytes of samples, without the pad byte
     * @param riffLimitBytes the RIFF size above which the file is RF64
     */
    ByteBuffer bytes(long dataBytes, long riffLimitBytes) {
        boolean extensible = channels > 2 || format != SampleFormat.PCM16;
        boolean counted = format == SampleFormat.FLOAT32;
        int formatBytes = extensible ? 40 : 16;
        int headerBytes = 12 + 8 + DS64_BYTES + 8 + formatBytes + (counted ? 12 : 0) + 8;
        long riffBytes = headerBytes - 8 + dataBytes + (dataBytes & 1);
        boolean large = riffBytes > riffLimitBytes;
        long frames = dataBytes / (channels * format.bytes());

        ByteBuffer header = ByteBuffer.allocate(headerBytes).order(ByteOrder.LITTLE_ENDIAN);
        tag(header, large ? "RF64" : "RIFF").putInt(large ? -1 : (int) riffBytes);
        tag(header, "WAVE");
        if (large) {
            tag(header, "ds64").putInt(DS64_BYTES).putLong(riffBytes).putLong(dataBytes).putLong(frames).putInt(0);
        } else {
            tag(header, "JUNK").putInt(DS64_BYTES).put(new byte[DS64_BYTES]);
        }
        tag(header, "fmt ").putInt(formatBytes);
        putFormat(header, extensible);
        if (counted) {
            tag(header, "fact").putInt(4).putInt(large ? -1 : (int) frames);
        }
        tag(header, "data").putInt(large ? -1 : (int) dataBytes);
        return header.flip();
    }

    private void putFormat(ByteBuffer header, boolean extensible) {
        int code = format == SampleFormat.FLOAT32 ? CODE_FLOAT : CODE_PCM;
        int frameBytes = channels * format.bytes();
        int containerBits = 8 * format.bytes();
        header.putShort((short) (extensible ? CODE_EXTENSIBLE : code)).putShort((short) channels);
        header.putInt(rateHz).putInt(rateHz * frameBytes).putShort((short) frameBytes).putShort((short) containerBits);
        if (extensible) {
            int speakers = channels == 1 ? SPEAKER_CENTRE : channels == 2 ? SPEAKERS_LEFT_RIGHT : NO_SPEAKERS;
            header.putShort((short) 22).putShort((short) containerBits).putInt(speakers);
            // The format's code as a GUID: xxxx0000-0000-0010-8000-00AA00389B71.
            header.putInt(code).putInt(0x00100000).putLong(0x719B3800AA000080L);
        }
    }

    private static ByteBuffer tag(ByteBuffer header, String tag) {
        return header.put(tag.getBytes(StandardCharsets.US_ASCII));
    }
}
