package understudy.rig;

import java.math.BigDecimal;
import java.math.MathContext;

/** How the divider's series branch reaches the clips. */
public sealed interface Coupling {

    /** Straight; the audio device's ground counts as the ground of the module. */
    record Direct() implements Coupling {}

    /** Through a capacitor, in both legs when the input is differential. It blocks steady current only. */
    record Capacitor(Spread farads) implements Coupling {
        public Capacitor {
            Bounds.check("series capacitor", farads, Bounds.FARADS);
        }
    }

    /**
     * Through an isolation transformer, which floats both clips.
     *
     * @param ratio           secondary turns for one primary turn, 0.01 to 100; the primary faces the jack
     * @param henries         inductance of the primary
     * @param primaryOhms     winding resistance
     * @param secondaryOhms   winding resistance
     * @param mostVoltSeconds integral of the primary's volts, from zero, at which the core saturates
     */
    record Transformer(
            Spread ratio, Spread henries, Spread primaryOhms, Spread secondaryOhms, double mostVoltSeconds)
            implements Coupling {
        public static final double LEAST_RATIO = 0.01;
        public static final double MOST_RATIO = 100;

        public Transformer {
            Bounds.fraction("transformer's ratio", ratio.nominal(), LEAST_RATIO, MOST_RATIO);
            Bounds.check("transformer's inductance", henries, Bounds.HENRIES);
            Bounds.check("primary's resistance", primaryOhms, Bounds.OHMS);
            Bounds.check("secondary's resistance", secondaryOhms, Bounds.OHMS);
            Bounds.fraction("transformer's volt-seconds", mostVoltSeconds, 1e-9, 100);
        }

        /** Turns at the jack, then at the clips, as it says on the part: "1:2", "5:1". */
        public String turns() {
            double up = ratio.nominal();
            return up >= 1 ? "1:" + number(up) : number(1 / up) + ":1";
        }

        private static String number(double turns) {
            return new BigDecimal(turns).round(new MathContext(3)).stripTrailingZeros().toPlainString();
        }

        /** Lowest frequency of a sine of {@code peakVolts} across the primary that the core still carries. */
        public double leastHz(double peakVolts) {
            return peakVolts / (2 * Math.PI * mostVoltSeconds);
        }
    }
}
