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
            List<List<double[]>> answers = spice.run("reltol=1e-6 abstol=1e-13 vntol=1e-9", List.of("op",
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
                        gain.volts() * Math.sin(gain.phaseRad()) - ac[2 + 2 * p])
                        / Math.hypot(ac[1 + 2 * p], ac[2 + 2 * p]);
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

    /** How the clips and the short stand before 1 us; after it both are closed, and the source is at one end. */
    private enum Before { TOUCHING, CLIPPED_ON, LONG_SHORTED }

    /**
     * Currents of shorts, as reported, against the greatest that the simulator sees just after the source has jumped to
     * either end and the short, or short and clips, have closed; and with the short closed for ever. The demand is 0.5 %;
     * closing takes 10 ns, against time constants of 20 us and more.
     */
    @Test
    void currentsOfShortsAgreeWithAnIndependentSimulator() throws Exception {
        double worst = 0;
        for (int n = 0; n < 12; n++) {
            RandomRigs draw = new RandomRigs(2000 + n, 20e-6);
            Rig rig = draw.rig();
            Input input = draw.input();
            for (State state : new State[] {State.SHORT_TO_GROUND, State.SHORT_TO_24_V}) {
                double[] most = new double[2];
                for (Before before : Before.values()) {
                    for (int sign = -1; sign <= 1; sign += 2) {
                        shorted(rig, input, state, sign, "p1", before, most);
                        if (input.differential()) {
                            shorted(rig, input, state, sign, "p2", before, most);
                        }
                    }
                }
                StateReport report = new StateStudy(rig, input, Use.FULL).report(state);
                double clip = report.clipAmps() / most[0];
                double jack = report.jackAmps() / most[1];
                String where = state + " of network " + n + ", " + rig + ", " + input;
                assertThat(clip).as("clip: " + where).isBetween(0.995, 1.005);
                assertThat(jack).as("jack: " + where).isBetween(0.995, 1.005);
                worst = Math.max(worst, Math.max(Math.abs(clip - 1), Math.abs(jack - 1)));
            }
        }
        System.out.printf("shorts against ngspice: worst %.1e of the current%n", worst);
    }

    /** Raises {@code most}: amps through a clip, amps through the jack. */
    private void shorted(Rig rig, Input input, State state, int sign, String pin, Before before, double[] most)
            throws Exception {
        Spice spice = new Spice(folder);
        spice.circuit(rig, input, false, String.format(Locale.ROOT, "PWL(0 0 1e-6 0 1.01e-6 %.12g)",
                sign * rig.output().fullScaleVolts().nominal()), before == Before.TOUCHING
                ? (name, from, to, ohms) -> String.format(Locale.ROOT,
                        "Bleg%1$s %2$s %3$s I=(V(%2$s)-V(%3$s))*(V(go)/%4$.12g+1e-12)", name, from, to, ohms)
                : Spice::wire);
        spice.line("Vgo go 0 %s", before == Before.LONG_SHORTED ? "1" : "PWL(0 0 1e-6 0 1.01e-6 1)");
        spice.line("Bshort %1$s 0 I=(V(%1$s)-%2$g)*(V(go)/0.01+1e-12)", pin, state.pinVolts());
        String secondLeg = input.differential() ? "v(bottom)-v(p2)" : "v(p2)";
        List<double[]> rows = spice.run("reltol=1e-4 abstol=1e-9 vntol=1e-6", List.of("tran 1e-8 1.1e-6"),
                "v(top)-v(p1)", secondLeg, "v(src)-v(out)").get(0);
        double[] last = rows.get(rows.size() - 1);
        assertThat(last[0]).as("end of the simulation").isGreaterThan(1.09e-6);
        double legOhms = rig.lead().ohms().nominal() * (input.differential() ? 1 : 2);
        most[0] = Math.max(most[0], Math.max(Math.abs(last[1]), Math.abs(last[2])) / legOhms);
        most[1] = Math.max(most[1], Math.abs(last[3]) / rig.output().outputOhms().nominal());
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
