package understudy.preflight;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import understudy.pattern.Hall;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Reluctor;
import understudy.pattern.Signal;
import understudy.pattern.Speed;
import understudy.pattern.SpeedUnit;
import understudy.pattern.Tone;
import understudy.pattern.Tooth;
import understudy.pattern.Wheel;
import understudy.pattern.WheelSignal;
import understudy.rig.Arming;
import understudy.rig.AudioOutput;
import understudy.rig.Coupling;
import understudy.rig.Divider;
import understudy.rig.FrontEnd;
import understudy.rig.Input;
import understudy.rig.Lead;
import understudy.rig.ReluctorInput;
import understudy.rig.Rig;
import understudy.rig.Spread;

/** Rigs, inputs and patterns whose answers can be worked out by hand: the pins follow the output but for what is named. */
final class Bench {
    static final int RATE_HZ = 48_000;
    /** Seen by the coupling capacitor: output, series resistor, input. */
    private static final double AROUND_OHMS = 100 + 900 + 9e3;

    private static final Map<Double, Double> EVEN_PEAKS = new ConcurrentHashMap<>();

    private Bench() {}

    /** Full scale 10 V; a corner of so many hertz, or none at 0. */
    static Rig rig(double cornerHz) {
        Optional<Spread> capacitor = cornerHz == 0 ? Optional.empty()
                : Optional.of(Spread.exactly(1 / (2 * Math.PI * cornerHz * AROUND_OHMS)));
        return new Rig(new AudioOutput(Spread.exactly(10), Spread.exactly(100), capacitor, false, 0),
                new Divider(Spread.exactly(900), Optional.empty(), new Coupling.Direct()),
                new Lead(Spread.exactly(1e-3), 1e-12));
    }

    /** 9 kohm to ground; nothing before the comparator but a series resistor and, if given, a filter capacitor. */
    static ReluctorInput input(Arming arming, ReluctorInput.Edge timing, double seriesOhms, Optional<Spread> filter) {
        return new ReluctorInput(false, Spread.exactly(9e3), Spread.exactly(0), Spread.exactly(1e9), 0,
                new FrontEnd(Spread.exactly(seriesOhms), filter, Optional.empty()), arming, timing, 12e3);
    }

    static Input hysteresis(double volts, ReluctorInput.Edge timing) {
        return input(new Arming.Hysteresis(-volts, volts), timing, 1, Optional.empty());
    }

    /** Switches at zero once armed at a small part of the last peak. */
    static Input zeroCrossing() {
        return input(new Arming.Adaptive(0.3, 1e-3, 10), ReluctorInput.Edge.FALLING, 1, Optional.empty());
    }

    static Wheel wheel(int positions, int missing, boolean centred) {
        double pitch = 360.0 / positions;
        List<Tooth> teeth = new ArrayList<>();
        for (int i = 0; i < positions - missing; i++) {
            teeth.add(new Tooth(i + 1, i * pitch - (centred ? pitch / 4 : 0), pitch / 2));
        }
        return new Wheel(360, pitch, teeth);
    }

    static Signal coil(int positions, int missing, double pole, double voltsAt10Hz, double ceilingVolts) {
        return new WheelSignal(wheel(positions, missing, true), new Reluctor(voltsAt10Hz, 10, ceilingVolts, pole, false));
    }

    static Signal hall(int positions, int missing, double peakVolts) {
        return new WheelSignal(wheel(positions, missing, false), new Hall(-peakVolts, peakVolts));
    }

    static Signal tone(Tone.Shape shape, double part, double peakVolts) {
        return new Tone(shape, Double.NaN, 1, 2 * peakVolts, 0, part);
    }

    /** Speeds are turns per second, the unit is Hz. */
    static Pattern pattern(Signal signal, double fromHz, double defaultHz, double toHz) {
        return new Pattern("bench", "bench", "test", "test", List.of(), List.of(),
                new Speed(SpeedUnit.HZ, Double.NaN, defaultHz, fromHz, toHz),
                List.of(new Output("signal", 1, 0, signal)), Optional.empty(), List.of(), 1);
    }

    static Setup setup(Pattern pattern, Rig rig, Input input) {
        return Setup.of(pattern, pattern.outputs().get(0), rig, input, RATE_HZ);
    }

    static Setup setup(Signal signal, Rig rig, Input input) {
        return setup(pattern(signal, 1, 10, 10_000), rig, input);
    }

    /**
     * Volts of a reluctor at an angle of its turn, by the model in words: the slope of the flux, a Gaussian of the pole's
     * width on every tooth edge, scaled so that evenly spaced teeth swing by {@code peakToPeakVolts}.
     */
    static double coilVolts(int positions, int missing, double pole, double peakToPeakVolts, double angleDeg) {
        return slope(positions, missing, pole, angleDeg) * peakToPeakVolts / 2
                / EVEN_PEAKS.computeIfAbsent(pole, Bench::evenPeak);
    }

    /** Of evenly spaced teeth; a pitch has 360 deg here, since the count of teeth cancels. */
    private static double evenPeak(double pole) {
        double peak = 0;
        for (int i = 0; i <= 4000; i++) {
            peak = Math.max(peak, slope(1, 0, pole, 0.09 * i));
        }
        return peak;
    }

    private static double slope(int positions, int missing, double pole, double angleDeg) {
        double pitch = 360.0 / positions;
        double sigma = pole * pitch;
        double sum = 0;
        for (int turn = -2; turn <= 2; turn++) {
            for (int i = 0; i < positions - missing; i++) {
                double centre = 360.0 * turn + i * pitch;
                sum += bell((angleDeg - centre + pitch / 4) / sigma) - bell((angleDeg - centre - pitch / 4) / sigma);
            }
        }
        return sum;
    }

    private static double bell(double u) {
        return Math.exp(-u * u / 2);
    }
}
