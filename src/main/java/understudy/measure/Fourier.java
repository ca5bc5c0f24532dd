package understudy.measure;

import org.jtransforms.fft.DoubleFFT_1D;
import pl.edu.icm.jlargearrays.ConcurrencyUtils;

/**
 * The one door to the FFT: real samples to the spectrum and back, on one thread, so that sums come in the same order
 * everywhere. Spectra are packed as JTransforms packs those of even length n: re 0, re n/2, re 1, im 1, re 2, im 2 ...
 */
final class Fourier {
    static {
        ConcurrencyUtils.setNumberOfThreads(1);
    }

    private Fourier() {}

    /** Replaces samples by their spectrum; an even number of them. */
    static void forward(double[] data) {
        new DoubleFFT_1D(data.length).realForward(data);
    }

    /** Undoes {@link #forward}. */
    static void inverse(double[] data) {
        new DoubleFFT_1D(data.length).realInverse(data, true);
    }

    /** The largest even length up to {@code most} without prime factors above 5: quick, and at most 6 % shorter. */
    static int lengthWithin(int most) {
        int length = most & ~1;
        while (!isQuick(length)) {
            length -= 2;
        }
        return length;
    }

    /** The smallest even length from {@code least} on without prime factors above 5. */
    static int lengthFrom(int least) {
        int length = least + 1 & ~1;
        while (!isQuick(length)) {
            length += 2;
        }
        return length;
    }

    private static boolean isQuick(int length) {
        int left = length;
        for (int prime : new int[] {2, 3, 5}) {
            while (left % prime == 0) {
                left /= prime;
            }
        }
        return left == 1;
    }
}
