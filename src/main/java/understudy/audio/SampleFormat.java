package understudy.audio;

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
}
