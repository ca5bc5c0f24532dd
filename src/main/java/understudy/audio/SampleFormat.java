package understudy.audio;

import java.nio.ByteBuffer;

/** How one sample is laid out in bytes; all are signed, and little-endian unless a line asks otherwise. */
public enum SampleFormat {
    PCM16(16, 2),
    /** Three bytes a sample. */
    PCM24(24, 3),
    /** The low three of four bytes, sign extended, as sound drivers have it. No WAV file is written so. */
    PCM24_IN_4(24, 4),
    PCM32(32, 4),
    /** IEEE 754 single precision, full scale 1.0. */
    FLOAT32(24, 4);

    private final int bits;
    private final int bytes;

    SampleFormat(int bits, int bytes) {
        this.bits = bits;
        this.bytes = bytes;
    }

    /** Bits that carry the signal. */
    public int bits() {
        return bits;
    }

    /** Bytes that one sample of one channel takes. */
    public int bytes() {
        return bytes;
    }

    /** Takes the next sample from a little-endian buffer, as a fraction of full scale. */
    double read(ByteBuffer from) {
        switch (this) {
            case PCM16:
                return from.getShort() * 0x1p-15;
            case PCM24:
                int low = from.getShort() & 0xFFFF;
                return (from.get() << 16 | low) * 0x1p-23;
            case PCM24_IN_4:
                return (from.getInt() << 8) * 0x1p-31;
            case PCM32:
                return from.getInt() * 0x1p-31;
            default:
                return from.getFloat();
        }
    }
}
