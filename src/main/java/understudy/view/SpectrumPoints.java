package understudy.view;

import java.util.ArrayList;
import java.util.List;
import understudy.measure.Spectrum;
import understudy.plot.LinePlot;

/** A spectrum as a line to draw: bins that would share a pixel are drawn as the strongest of them. */
public final class SpectrumPoints {

    private static final int PER_DECADE = 400;
    /** Bins below belong to the steady part. */
    private static final int FIRST_BIN = 8;
    private static final double LEAST_DB = -200;

    private SpectrumPoints() {}

    public static List<LinePlot.Point> of(Spectrum spectrum, double fullScaleVolts) {
        List<LinePlot.Point> points = new ArrayList<>();
        int bin = FIRST_BIN;
        while (bin < spectrum.bins()) {
            int end = Math.max(bin + 1, (int) (bin * Math.pow(10, 1.0 / PER_DECADE)));
            int strongest = bin;
            for (int k = bin; k < Math.min(end, spectrum.bins()); k++) {
                strongest = spectrum.rmsVolts(k) > spectrum.rmsVolts(strongest) ? k : strongest;
            }
            // a full-scale sine is 0 dB
            double part = spectrum.rmsVolts(strongest) * Math.sqrt(2) / fullScaleVolts;
            points.add(new LinePlot.Point(strongest * spectrum.binHz(), Math.max(LEAST_DB, 20 * Math.log10(part))));
            bin = end;
        }
        return points;
    }
}
