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
        int clamped = 0;
        for (int n = 0; n < NETWORKS; n++) {
            RandomRigs draw = new RandomRigs(1000 + n, 470e-6);
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
            clamped += input.frontEnd().clamp()
                    .filter(clamp -> most[1] > clamp.highVolts() + 0.01 || least[1] < clamp.lowVolts() - 0.01).isPresent()
                    ? 1 : 0;
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
        assertThat(clamped).as("networks whose clamps conduct").isGreaterThan(10);
        System.out.printf("against ngspice, in parts of the swing: rest %.1e, gain %.1e, time %.1e%n",
                worstRest, worstGain, worstTime);
    }

    /**
     * Currents and jack volts of every short, as reported, against the greatest that the simulator sees: at rest, then
     * the pin shorted while the source jumps to one end; long after, once to each end. And from before touching: the
     * clips close on the shorted pin. The demand is 0.5 %; the simulator's first instant is 1 ns wide.
     */
    @Test
    void currentsOfShortsAgreeWithAnIndependentSimulator() throws Exception {
        double worst = 0;
        for (int n = 0; n < 12; n++) {
            RandomRigs draw = new RandomRigs(2000 + n, 10e-6);
            Rig rig = draw.rig();
            Input input = draw.input();
            double legOhms = rig.lead().ohms().nominal() * (input.differential() ? 1 : 2);
            for (State state : new State[] {State.SHORT_TO_GROUND, State.SHORT_TO_24_V}) {
                double mostAmps = 0;
                double mostJackAmps = 0;
                for (boolean second : input.differential() ? new boolean[] {false, true} : new boolean[] {false}) {
                    for (int sign = -1; sign <= 1; sign += 2) {
                        for (boolean touching : new boolean[] {false, true}) {
                            List<double[]> rows = shorted(rig, input, state.pinVolts(),
                                    sign * rig.output().fullScaleVolts().nominal(), second, touching);
                            for (double[] row : rows) {
                                if (row[0] > 1.0 + 1e-9) { // the switch itself takes the first nanosecond
                                    mostAmps = Math.max(mostAmps, Math.max(Math.abs(row[1]),
                                            input.differential() ? Math.abs(row[2]) : 0) / legOhms);
                                    mostJackAmps = Math.max(mostJackAmps,
                                            Math.abs(row[3]) / rig.output().outputOhms().nominal());
                                }
                            }
                        }
                    }
                }
                StateReport report = new StateStudy(rig, input, Use.FULL).report(state);
                String where = state + " of network " + n + ", " + rig + ", " + input;
                System.out.printf("%s %.6g %.6g   %.6g %.6g%n", where.substring(0, 30), report.clipAmps(), mostAmps, report.jackAmps(), mostJackAmps);
                worst = Math.max(worst, Math.abs(report.clipAmps() / mostAmps - 1));
                worst = Math.max(worst, Math.abs(report.jackAmps() / mostJackAmps - 1));
                assertThat(report.clipAmps() / mostAmps).as("clip: " + where).isBetween(0.995, 1.005);
                assertThat(report.jackAmps() / mostJackAmps).as("jack: " + where).isBetween(0.995, 1.005);
            }
        }
        System.out.printf("shorts against ngspice: worst %.1e of the current%n", worst);
    }

    private List<double[]> shorted(
            Rig rig, Input input, double pinVolts, double peak, boolean second, boolean touching) throws Exception {
        Spice spice = new Spice(folder);
        String source = String.format(Locale.ROOT,
                "PWL(0 0 1 0 1.0000000001 %1$g 1.5 %1$g 1.51 0 20 0 20.0000001 %1$g 20.001 %1$g 20.0010001 %2$g 20.002 %2$g)",
                peak, -peak);
        spice.circuit(rig, input, false, source, touching
                ? (name, from, to, ohms) -> String.format(Locale.ROOT,
                        "Sleg%1$s %2$s %3$s go 0 clip%1$s%n.model clip%1$s sw vt=0.5 ron=%4$.12g roff=1e12",
                        name, from, to, ohms)
                : Spice::wire);
        spice.line("Vgo go 0 PWL(0 0 1 0 1.0000000001 1)");
        spice.line("Vshort short 0 %g", pinVolts);
        spice.line("Sshort %s short go 0 short", second ? "p2" : "p1");
        spice.line(".model short sw vt=0.5 ron=0.01 roff=1e12");
        boolean floats = input.differential() && !(rig.divider().coupling() instanceof Coupling.Direct);
        return spice.run(List.of("tran 1e-3 20.002 0 0.02"), "v(top)-v(p1)",
                input.differential() ? floats ? "v(bottom)-v(p2)" : "v(p2)" : "v(top)", "v(src)-v(out)").get(0);
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
