package understudy.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The model against ngspice, over drawn networks. The demand is 0.5 % of the swing; what is asked here is five times
 * less, since both sides claim to be exact but for ngspice's own tolerances (1e-6 a step, some thousands of steps).
 */
class SpiceTest {
    private static final double PART_OF_SWING = 0.001;
    private static final int NETWORKS = 60;
    private static final int SAMPLES = 300;

    @TempDir
    Path folder;

    @Test
    void restFrequencyAndTimeAgreeWithAnIndependentSimulator() throws Exception {
        double worstRest = 0;
        double worstGain = 0;
        double worstTime = 0;
        for (int n = 0; n < NETWORKS; n++) {
            RandomRigs draw = new RandomRigs(1000 + n);
            Rig rig = draw.rig();
            Input input = draw.input();
            double hz = draw.between(1, 20_000);
            double stepSeconds = draw.between(5e-6, 1e-3);
            double[] signal = draw.signal(SAMPLES);
            double fullScale = rig.output().fullScaleVolts().nominal() * (rig.output().inverted() ? -1 : 1);

            Spice spice = new Spice(folder);
            spice.circuit(rig, input, true,
                    String.format(Locale.ROOT, "DC 0 AC %.12g PWL(%s)", fullScale, points(signal, fullScale, stepSeconds)),
                    Spice::wire);
            List<List<double[]>> answers = spice.run(List.of("op",
                    String.format(Locale.ROOT, "ac lin 1 %.12g %.12g", hz, hz),
                    String.format(Locale.ROOT, "tran %.12g %.12g 0 %.12g",
                            stepSeconds, SAMPLES * stepSeconds, stepSeconds / 25)), "v(p1)-v(p2)", "v(s1)-v(s2)");

            Connection connection = new Connection(rig, input);
            Probe[] probes = {Probe.PINS, Probe.COMPARATOR};
            Transient time = connection.fromRest(stepSeconds);
            double[] least = {1e9, 1e9};
            double[] most = {-1e9, -1e9};
            double[] miss = new double[2];
            for (int i = 1; i < SAMPLES; i++) {
                time.stepTo(signal[i]);
                for (int p = 0; p < 2; p++) {
                    double theirs = Spice.at(answers.get(2), i * stepSeconds, p + 1);
                    least[p] = Math.min(least[p], theirs);
                    most[p] = Math.max(most[p], theirs);
                    miss[p] = Math.max(miss[p], Math.abs(time.volts(probes[p]) - theirs));
                }
            }
            for (int p = 0; p < 2; p++) {
                double swing = most[p] - least[p];
                String where = "network " + n + ", " + probes[p] + ", " + rig + ", " + input;
                double rest = Math.abs(connection.restVolts(probes[p]) - answers.get(0).get(0)[p + 1]) / swing;
                double[] ac = answers.get(1).get(0);
                Connection.Gain gain = connection.gain(probes[p], hz);
                double apart = Math.hypot(gain.volts() * Math.cos(gain.phaseRad()) - ac[1 + 2 * p],
                        gain.volts() * Math.sin(gain.phaseRad()) - ac[2 + 2 * p]) / Math.hypot(ac[1 + 2 * p], ac[2 + 2 * p]);
                worstRest = Math.max(worstRest, rest);
                worstGain = Math.max(worstGain, apart);
                worstTime = Math.max(worstTime, miss[p] / swing);
                assertThat(rest).as("at rest: " + where).isLessThan(PART_OF_SWING);
                assertThat(apart).as("at " + hz + " Hz: " + where).isLessThan(PART_OF_SWING);
                assertThat(miss[p] / swing).as("in time: " + where).isLessThan(PART_OF_SWING);
            }
        }
        System.out.printf("against ngspice, in parts of the swing: rest %.1e, gain %.1e, time %.1e%n",
                worstRest, worstGain, worstTime);
    }

    private static String points(double[] signal, double fullScale, double stepSeconds) {
        StringBuilder points = new StringBuilder();
        for (int i = 0; i < signal.length; i++) {
            points.append(String.format(Locale.ROOT, "%.12g %.12g ", i * stepSeconds, signal[i] * fullScale));
            if (i % 8 == 7) {
                points.append("\n+ ");
            }
        }
        return points.toString();
    }
}
