package understudy.rig;

import java.util.ArrayList;
import java.util.List;

/** Preferred values of resistors and capacitors, IEC 60063. */
public enum Preferred {
    /** Usual for capacitors, and for resistors of 10 %. */
    E12(10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82),
    /** Usual for resistors of 5 % and 1 %. */
    E24(10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91),
    /** For resistors of 1 %. */
    E96(ofThreeDigits(96));

    private final double[] decade; // from 1 up to, not including, 10

    Preferred(int... twoDigits) {
        decade = new double[twoDigits.length];
        for (int i = 0; i < decade.length; i++) {
            // E96's three digits are rounded powers of the 96th root of ten; the older series are history
            decade[i] = twoDigits.length == 96 ? twoDigits[i] / 100.0 : twoDigits[i] / 10.0;
        }
    }

    private static int[] ofThreeDigits(int steps) {
        int[] digits = new int[steps];
        for (int i = 0; i < steps; i++) {
            digits[i] = (int) Math.rint(100 * StrictMath.pow(10, (double) i / steps));
        }
        return digits;
    }

    /** All values from {@code least} to {@code most}, rising; in whatever unit these are, above 0. */
    public List<Double> between(double least, double most) {
        List<Double> values = new ArrayList<>();
        for (int power = (int) Math.floor(Math.log10(least)); power <= Math.log10(most); power++) {
            for (double digits : decade) {
                double value = Double.parseDouble(digits + "e" + power); // so that 4.7 k is exactly 4700
                if (value >= least * (1 - 1e-12) && value <= most * (1 + 1e-12)) {
                    values.add(value);
                }
            }
        }
        return values;
    }

    /** The smallest value that is no less. */
    public double atLeast(double value) {
        return between(value, 10.1 * value).get(0);
    }
}
