package understudy.wave;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import understudy.pattern.Fault;
import understudy.pattern.Hall;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Profile;
import understudy.pattern.Reluctor;
import understudy.pattern.Signal;
import understudy.pattern.Speed;
import understudy.pattern.SpeedUnit;
import understudy.pattern.Tooth;
import understudy.pattern.Wheel;
import understudy.pattern.WheelSignal;

/** Patterns made in code, for tests of the engine alone. */
final class Patterns {
    static final Hall HALL = new Hall(-1.2, 1.2);

    private Patterns() {}

    /** N positions, the last M empty; teeth half a pitch wide, leading edge or centre of the first at 0. */
    static Wheel wheel(int positions, int missing, boolean centred) {
        double pitch = 360.0 / positions;
        List<Tooth> teeth = new ArrayList<>();
        for (int i = 0; i < positions - missing; i++) {
            teeth.add(new Tooth(i + 1, i * pitch - (centred ? pitch / 4 : 0), pitch / 2));
        }
        return new Wheel(360, pitch, teeth);
    }

    static Signal hall(int positions, int missing) {
        return new WheelSignal(wheel(positions, missing, false), HALL);
    }

    static Signal reluctor(int positions, int missing, double pole) {
        return new WheelSignal(wheel(positions, missing, true), new Reluctor(1.4, 200 / 60.0, 1.6, pole, false));
    }

    static Pattern of(Signal... signals) {
        List<Output> outputs = new ArrayList<>();
        for (Signal signal : signals) {
            outputs.add(new Output("output " + (outputs.size() + 1), 1, 0, signal));
        }
        return of(outputs, Optional.empty(), List.of());
    }

    static Pattern of(List<Output> outputs, Optional<Profile> profile, List<Fault> faults) {
        return new Pattern("test", "Test", "", "", List.of(), List.of(),
                new Speed(SpeedUnit.HZ, Double.NaN, 10, 0, 10_000), outputs, profile, faults, 1);
    }

    static Renderer renderer(Pattern pattern, int rateHz, double startHz) {
        return new Renderer(pattern, rateHz, startHz, new AtomicReference<>(Renderer.startingHand(pattern)));
    }

    /** Plays {@code frames} in blocks of {@code block}. */
    static double[][] render(VoltSource source, int frames, int block) {
        double[][] all = new double[source.channels()][frames];
        double[][] part = new double[source.channels()][block];
        for (int done = 0; done < frames; done += block) {
            int some = Math.min(block, frames - done);
            source.render(part, some);
            for (int c = 0; c < part.length; c++) {
                System.arraycopy(part[c], 0, all[c], done, some);
            }
        }
        return all;
    }

    /** Rounded to 24 bits of a full scale of sqrt(2) volts. */
    static double[] to24Bits(double[] volts) {
        double[] rounded = new double[volts.length];
        double step = Math.sqrt(2) / (1 << 23);
        for (int i = 0; i < volts.length; i++) {
            rounded[i] = Math.rint(volts[i] / step) * step;
        }
        return rounded;
    }
}
