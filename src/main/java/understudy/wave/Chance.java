package understudy.wave;

/**
 * Draws of chance that depend on nothing but a seed, a stream and an index, so that they come out the same whatever
 * the cut into blocks, and whatever was switched on before. The mixing is that of SplitMix64 (Steele, Lea, Flood,
 * "Fast splittable pseudorandom number generators", OOPSLA 2014).
 */
final class Chance {
    private static final long GOLDEN = 0x9E3779B97F4A7C15L;
    private static final double TO_UNIT = 0x1p-53;

    private final long key;

    Chance(long seed, int stream) {
        this.key = mix(mix(seed + GOLDEN) + (stream + 1) * GOLDEN);
    }

    /** Evenly spread over [0, 1). */
    double uniform(long index) {
        return (bits(index) >>> 11) * TO_UNIT;
    }

    /**
     * White noise of standard deviation 1: the sum of eight 16-bit draws, a bell out to 4.9 deviations. Bounded on
     * purpose: a peak can be foreseen.
     */
    double bell(long index) {
        long a = bits(2 * index);
        long b = bits(2 * index + 1);
        long sum = (a & 0xFFFF) + (a >>> 16 & 0xFFFF) + (a >>> 32 & 0xFFFF) + (a >>> 48)
                + (b & 0xFFFF) + (b >>> 16 & 0xFFFF) + (b >>> 32 & 0xFFFF) + (b >>> 48);
        return (sum - 8 * 32767.5) * BELL_SCALE;
    }

    /** A draw over 0..n-1 has variance (n*n-1)/12; eight of them add up. */
    private static final double BELL_SCALE = 1 / Math.sqrt(8 * (65536.0 * 65536.0 - 1) / 12);

    /** Most that {@link #bell} can give. */
    static final double BELL_MOST = 8 * 32767.5 * BELL_SCALE;

    private long bits(long index) {
        return mix(key + index * GOLDEN);
    }

    private static long mix(long z) {
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
