package understudy.wave;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import understudy.pattern.Fault;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Signal;
import understudy.pattern.Tone;
import understudy.pattern.When;

/** Each fault does what it says, at its place and time, and leaves the rest alone. 10 turns a second throughout. */
class FaultTest {
    private static final int RATE = 48_000;
    private static final double HZ = 10;
    private static final int TURN = 4800;

    private static Fault.Place place(When when) {
        return new Fault.Place("fault", "output", when, true);
    }

    private static double[] play(Signal signal, int frames, Fault... faults) {
        Pattern pattern = Patterns.of(
                List.of(new Output("output", 1, 0, signal)), Optional.empty(), List.of(faults));
        return Patterns.render(Patterns.renderer(pattern, RATE, HZ), frames, 480)[0];
    }

    private static final Signal TONE = new Tone(Tone.Shape.SINE, 1000, Double.NaN, 2, 0, 0.5);

    /** Rising crossings of 0, told to better than a frame by a straight line between samples. */
    private static List<Double> rising(double[] volts) {
        List<Double> found = new ArrayList<>();
        for (int n = 1; n < volts.length; n++) {
            if (volts[n - 1] < 0 && volts[n] >= 0) {
                found.add(n - volts[n] / (volts[n] - volts[n - 1]));
            }
        }
        return found;
    }

    @Test
    void aMissingToothIsMissingEveryThirdTurn() {
        double[] volts = play(Patterns.hall(36, 1), 9 * TURN,
                new Fault.MissingTooth(place(new When(0, 100, 3, 1)), List.of(5)));
        List<Integer> seen = new ArrayList<>();
        for (int turn = 0; turn < 9; turn++) {
            // the middle of tooth 5, which spans 40 to 45 deg
            seen.add(volts[(int) (turn * TURN + 42.5 / 360 * TURN)] > 0 ? 1 : 0);
        }
        assertThat(seen).containsExactly(0, 1, 1, 0, 1, 1, 0, 1, 1);
    }

    @Test
    void aWeakToothHasPartOfItsVoltsAndKeepsItsTiming() {
        double[] healthy = play(Patterns.reluctor(36, 1, 0.2), TURN);
        double[] weak = play(Patterns.reluctor(36, 1, 0.2), TURN,
                new Fault.WeakTooth(place(When.ALWAYS), List.of(10), 0.4));
        // tooth 10 sits at 90 deg. At its leading edge, 87.5 deg, its own trailing edge and the trailing edge of the
        // healthy tooth before it are 5 deg = 2.5 sigma away; whatever is further adds exp(-12.5), 4e-6. Frames are
        // 0.075 deg apart and the instant is met within half of one.
        double pull = Math.exp(-2.5 * 2.5 / 2);
        double truth = (0.4 * (1 - pull) - pull) / (1 - 2 * pull);
        int at = (int) Math.round((90 - 2.5) / 360 * TURN);
        assertThat(weak[at] / healthy[at]).isCloseTo(truth, within(0.003));
        assertThat(weak[TURN / 2 + 7]).isEqualTo(healthy[TURN / 2 + 7]);
    }

    @Test
    void aDisplacedToothComesLateByItsAngle() {
        List<Double> healthy = rising(play(Patterns.hall(36, 1), TURN));
        List<Double> bent = rising(play(Patterns.hall(36, 1), TURN,
                new Fault.DisplacedTooth(place(When.ALWAYS), List.of(7), 1.5)));
        assertThat(bent).hasSameSizeAs(healthy);
        for (int k = 0; k < healthy.size(); k++) {
            // the list begins with tooth 1 or 2, by whether frame 0 counts as risen; find tooth 7 by its angle
            boolean tooth7 = Math.abs(healthy.get(k) - 60.0 / 360 * TURN) < 1;
            double late = tooth7 ? 1.5 / 360 * TURN : 0;
            // a line between samples of a kernel of 1.5 frames is off by less than a twentieth of a frame
            assertThat(bent.get(k) - healthy.get(k)).isCloseTo(late, within(0.05));
        }
    }

    @Test
    void runOutTakesVoltsAndTimeOnceATurn() {
        double[] healthy = play(Patterns.reluctor(36, 0, 0.25), TURN);
        double[] eccentric = play(Patterns.reluctor(36, 0, 0.25), TURN,
                new Fault.RunOut(place(When.ALWAYS), 0.5, 0, 90));
        for (int deg = 0; deg < 360; deg += 10) {
            int at = (int) Math.round((deg + 2.5) / 360 * TURN);
            double truth = 1 - 0.5 * (1 - Math.cos(2 * Math.PI * ((double) at / TURN - 0.25))) / 2;
            assertThat(eccentric[at] / healthy[at]).isCloseTo(truth, within(1e-6));
        }
        List<Double> even = rising(play(Patterns.hall(36, 0), TURN));
        List<Double> uneven = rising(play(Patterns.hall(36, 0), TURN,
                new Fault.RunOut(place(When.ALWAYS), 0, 1, 0)));
        for (int k = 0; k < even.size(); k++) {
            double turn = even.get(k) / TURN;
            assertThat(uneven.get(k) - even.get(k))
                    .isCloseTo(Math.sin(2 * Math.PI * turn) / 360 * TURN, within(0.05));
        }
    }

    @Test
    void aDropoutRestsForItsTimeAtItsAngle() {
        double[] volts = play(TONE, 2 * TURN, new Fault.Dropout(place(When.ALWAYS), 90, 0.02));
        double[] healthy = play(TONE, 2 * TURN);
        for (int n = 0; n < volts.length; n++) {
            int inTurn = n % TURN;
            if (inTurn > 1200 + 9 && inTurn < 1200 + 960 - 9) {
                assertThat(volts[n]).isCloseTo(0, within(1e-8));
            } else if (inTurn < 1200 - 9 || inTurn > 1200 + 960 + 9) {
                assertThat(volts[n]).isCloseTo(healthy[n], within(1e-8));
            }
        }
    }

    @Test
    void flickerOpensAsOftenAndAsLongAsDeclared() {
        Signal level = new Tone(Tone.Shape.SQUARE, 1e-6, Double.NaN, 2, 0, 0.5);
        int seconds = 100;
        double[] volts = play(level, seconds * RATE, new Fault.Flicker(place(When.ALWAYS), 20, 0.004));
        int openings = 0;
        double open = 0;
        for (int n = 1; n < volts.length; n++) {
            // closed is +1 V, open rests at the low level of -1 V
            openings += volts[n - 1] >= 0 && volts[n] < 0 ? 1 : 0;
            open += volts[n] < 0 ? 1 : 0;
        }
        // one opening a slot; two in neighbouring slots run together when closer than the first is long: some 4 ms in
        // 50 ms, an event of chance (4/50)^2 / 2 = 0.3 % or so, and never more than all slots
        assertThat(openings).isBetween(1970, 2000);
        // 2000 lengths of 2 to 6 ms: mean 4 ms, its spread 1.15 ms / sqrt(2000) = 0.65 %; five times that, and overlaps
        assertThat(open / RATE / 2000).isCloseTo(0.004, within(0.004 * 0.04));
    }

    @Test
    void humSpikesAndLevelDoWhatTheySay() {
        Signal quiet = new Tone(Tone.Shape.SINE, 1000, Double.NaN, 1e-9, 0, 0.5);
        double[] hum = play(quiet, RATE, new Fault.Hum(place(When.ALWAYS), 0.1, 50));
        for (int n = 0; n < RATE; n += 13) {
            assertThat(hum[n]).isCloseTo(0.1 * Math.sqrt(2) * Math.sin(2 * Math.PI * 50 * n / RATE), within(1e-8));
        }
        double[] spikes = play(quiet, 3 * TURN, new Fault.Spikes(place(When.ALWAYS), 0.8, 100e-6, 45));
        double halfWidth = 100e-6 * RATE / 2;
        double sigma = halfWidth / Math.sqrt(2 * Math.log(2));
        for (int n = 0; n < spikes.length; n++) {
            double away = n % TURN - 600;
            assertThat(spikes[n]).isCloseTo(0.8 * Math.exp(-away * away / (2 * sigma * sigma)), within(2e-8));
        }
        double[] half = play(TONE, TURN, new Fault.Level(place(When.ALWAYS), 0.5));
        double[] swapped = play(TONE, TURN, new Fault.SwappedPolarity(place(When.ALWAYS)));
        double[] healthy = play(TONE, TURN);
        for (int n = 0; n < TURN; n++) {
            assertThat(half[n]).isEqualTo(0.5 * healthy[n]);
            assertThat(swapped[n]).isEqualTo(-healthy[n]);
        }
    }

    @Test
    void aJumpedBeltMovesEveryToothInTheEnd() {
        List<Double> healthy = rising(play(Patterns.hall(36, 0), 2 * TURN));
        List<Double> jumped = rising(play(Patterns.hall(36, 0), 2 * TURN, new Fault.Shift(place(When.ALWAYS), 20)));
        double last = jumped.get(jumped.size() - 1);
        double nearest = healthy.stream().mapToDouble(at -> Math.abs(at + 20.0 / 360 * TURN - last)).min().orElseThrow();
        assertThat(nearest).isLessThan(0.05);
    }

    @Test
    void aFaultActsOnlyInItsTime() {
        double[] volts = play(TONE, RATE, new Fault.Level(place(new When(0.25, 0.5, 1, 1)), 0));
        double[] healthy = play(TONE, RATE);
        // it comes and goes over 5 ms
        assertThat(volts[RATE / 4 - 10]).isEqualTo(healthy[RATE / 4 - 10]);
        assertThat(volts[RATE / 4 + 260]).isCloseTo(0, within(1e-12));
        assertThat(volts[RATE / 2 - 10]).isCloseTo(0, within(1e-12));
        assertThat(volts[RATE / 2 + 260]).isEqualTo(healthy[RATE / 2 + 260]);
    }

    @Test
    void chanceKeepsItsOddsAndItsSeed() {
        Fault fault = new Fault.MissingTooth(place(new When(0, 1e9, 1, 0.3)), List.of(5));
        Signal wheel = Patterns.hall(36, 1);
        Pattern pattern = Patterns.of(List.of(new Output("output", 1, 0, wheel)), Optional.empty(), List.of(fault));
        int turns = 2000;
        double hz = 100;
        int missing = 0;
        boolean differs = false;
        double[] first = Patterns.render(Patterns.renderer(pattern, RATE, hz), turns * 480, 480)[0];
        double[] again = Patterns.render(Patterns.renderer(pattern, RATE, hz), turns * 480, 480)[0];
        double[] other = Patterns.render(Patterns.renderer(pattern.withSeed(2), RATE, hz), turns * 480, 480)[0];
        assertThat(again).isEqualTo(first);
        for (int turn = 0; turn < turns; turn++) {
            int at = (int) (turn * 480 + 42.5 / 360 * 480);
            missing += first[at] < 0 ? 1 : 0;
            differs |= first[at] < 0 != other[at] < 0;
        }
        // binomial: 600 give or take 20.5; five times that
        assertThat(missing).isBetween(600 - 103, 600 + 103);
        assertThat(differs).isTrue();
    }
}
