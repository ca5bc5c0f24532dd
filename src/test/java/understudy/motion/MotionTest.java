package understudy.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import understudy.pattern.Profile;

/** Angles against closed forms worked out here, numerical integration, and exact decimal arithmetic. */
class MotionTest {
    private static final int RATE = 48_000;

    private static double turnsNow(Motion motion, int frame) {
        return motion.baseTurn() + motion.turns()[frame];
    }

    @Test
    void holdsForADayWithoutDrift() {
        double hz = 800 / 60.0;
        Motion motion = new Motion(null, hz, RATE);
        long quanta = 24L * 3600 * RATE / Motion.QUANTUM;
        for (long q = 0; q < quanta; q++) {
            motion.advance(Double.NaN);
        }
        BigDecimal truth = new BigDecimal(hz)
                .multiply(BigDecimal.valueOf(motion.startFrame()))
                .divide(BigDecimal.valueOf(RATE), MathContext.DECIMAL128);
        double missTurns = truth.subtract(BigDecimal.valueOf(motion.baseTurn()))
                .subtract(new BigDecimal(motion.turns()[0])).doubleValue();
        // turns per frame are rounded to 1.1e-16 of themselves: over a day 1e-11 s, well within the asked 1 ns
        assertThat(Math.abs(missTurns / hz)).isLessThan(2e-11);
    }

    @Test
    void rampsAndSweepsFollowTheirIntegrals() {
        double from = 500 / 60.0;
        double to = 6000 / 60.0;
        Motion ramp = new Motion(new Profile(List.of(new Profile.Ramp(from, to, 5))), from, RATE);
        Motion sweep = new Motion(new Profile(List.of(new Profile.Sweep(from, to, 5))), from, RATE);
        double growth = Math.log(to / from) / 5;
        for (int q = 0; q * Motion.QUANTUM < 5 * RATE - Motion.QUANTUM; q++) {
            ramp.advance(Double.NaN);
            sweep.advance(Double.NaN);
            double t = (double) ramp.startFrame() / RATE;
            // some hundred turns in doubles: 1e-13 turns, and a few roundings
            assertThat(turnsNow(ramp, 0)).isCloseTo(from * t + (to - from) / 5 * t * t / 2, within(1e-12));
            assertThat(turnsNow(sweep, 0)).isCloseTo(from * Math.expm1(growth * t) / growth, within(1e-12));
        }
    }

    @Test
    void crankingSwingsOnceACompression() {
        double hz = 180 / 60.0;
        double ripple = 0.3;
        Motion motion = new Motion(new Profile(List.of(new Profile.Crank(hz, 10, 4, ripple))), hz, RATE);
        // numerical integration of the declared law in the mean angle: speed = hz (1 + r sin(2 pi 2 a))
        DoubleUnaryOperator speed = a -> 1 + ripple * Math.sin(2 * Math.PI * 2 * a);
        double turns = 0;
        double mean = 0;
        int perFrame = 8;
        double step = hz / RATE / perFrame;
        for (int q = 0; q < 500; q++) {
            motion.advance(Double.NaN);
            for (int i = 0; i < Motion.QUANTUM; i++) {
                // Simpson with steps of 8e-6 turns is exact here; 256 000 additions round by up to 1e-16 each
                assertThat(turnsNow(motion, i)).isCloseTo(turns, within(3e-11));
                assertThat(motion.turnsPerFrame()[i] * RATE).isCloseTo(hz * speed.applyAsDouble(mean), within(1e-9));
                for (int k = 0; k < perFrame; k++) {
                    turns += step / 6 * (speed.applyAsDouble(mean) + 4 * speed.applyAsDouble(mean + step / 2)
                            + speed.applyAsDouble(mean + step));
                    mean += step;
                }
            }
        }
    }

    @Property(tries = 300)
    void theInstantOfAnAngleIsWhenTheAngleIsReached(
            @ForAll @DoubleRange(min = 0.2, max = 150) double fromHz,
            @ForAll @DoubleRange(min = 0.2, max = 150) double toHz,
            @ForAll @IntRange(min = 1, max = 12) int cylinders,
            @ForAll @DoubleRange(min = 0, max = 0.9) double ripple,
            @ForAll @IntRange(min = 0, max = 3) int kind) {
        Profile.Step step = switch (kind) {
            case 0 -> new Profile.Hold(fromHz, 0.05);
            case 1 -> new Profile.Ramp(fromHz, toHz, 0.05);
            case 2 -> new Profile.Sweep(fromHz, toHz, 0.05);
            default -> new Profile.Crank(fromHz, 0.05, cylinders, ripple);
        };
        Motion motion = new Motion(new Profile(List.of(step, new Profile.Ramp(Double.NaN, toHz, 0.0313))), fromHz, RATE);
        for (int q = 0; q < 80; q++) {
            motion.advance(Double.NaN);
            for (int i = 0; i < Motion.QUANTUM; i += 9) {
                double back = motion.frameAt(motion.turns()[i]);
                // an angle of up to two turns is told to 4e-16; at 0.2 Hz, less a ripple of 0.9, a frame is 4e-7 turns
                assertThat(back).isCloseTo(i, within(1e-8));
            }
        }
    }

    @Property(tries = 100)
    void neitherAngleNorSpeedJumpsWhenTheHandTakesOver(
            @ForAll @DoubleRange(min = 0, max = 150) double startHz,
            @ForAll @DoubleRange(min = 0, max = 150) double firstHz,
            @ForAll @DoubleRange(min = 0, max = 150) double secondHz,
            @ForAll @IntRange(min = 1, max = 60) int between) {
        Motion motion = new Motion(null, startHz, RATE);
        double before = Double.NaN;
        double speedBefore = startHz / RATE;
        // the ramps last 0.05 s: no frame changes the speed by more than their slope
        double mostChange = 150.0 / RATE / (Motion.HAND_RAMP_SECONDS * RATE) * 1.001 + 1e-18;
        for (int q = 0; q < 200; q++) {
            motion.advance(q < 5 ? Double.NaN : q < 5 + between ? firstHz : secondHz);
            for (int i = 0; i < Motion.QUANTUM; i++) {
                double speed = motion.turnsPerFrame()[i];
                if (!Double.isNaN(before)) {
                    assertThat(turnsNow(motion, i) - before)
                            .isCloseTo((speed + speedBefore) / 2, within(mostChange + 1e-12));
                }
                assertThat(Math.abs(speed - speedBefore)).isLessThanOrEqualTo(mostChange);
                speedBefore = speed;
                before = turnsNow(motion, i);
            }
        }
        assertThat(speedBefore * RATE).isCloseTo(secondHz, within(1e-9));
    }

    @Test
    void aTravelIsWalkedFrameByFrameAndOnlyOnce() {
        Motion motion = new Motion(null, 10, RATE);
        Travel travel = new Travel(List.of(new Profile.Ramp(Double.NaN, 30, 0.5), new Profile.Hold(30, 0.1), new Profile.Sweep(Double.NaN, 15, 0.2)));
        assertThat(travel.seconds()).isCloseTo(0.8, within(1e-15));
        int asked = 10;
        for (int q = 0; q < 1000; q++) {
            motion.advance(q < asked ? Double.NaN : 15, q < asked ? null : travel);
        }
        // it begins one quantum behind the one in which it was asked for
        double start = (asked + 1) * Motion.QUANTUM / (double) RATE;
        double now = (double) motion.startFrame() / RATE;
        double ramped = (10 + 30) / 2.0 * 0.5;
        double swept = (30 - 15) * 0.2 / Math.log(2); // the integral of 30 to 15 in equal ratios
        assertThat(turnsNow(motion, 0))
                .isCloseTo(10 * start + ramped + 30 * 0.1 + swept + 15 * (now - start - 0.8), within(1e-9));
        assertThat(motion.turnsPerFrame()[0] * RATE).isCloseTo(15, within(1e-9));
    }

    @Test
    void loopsRunTheirSteps() {
        Profile loop = new Profile(List.of(
                new Profile.Repeat(3, List.of(new Profile.Hold(10, 0.1), new Profile.Hold(20, 0.1))),
                new Profile.Hold(1, 0.1)));
        Motion motion = new Motion(loop, 10, RATE);
        double turns = 0;
        while (motion.startFrame() < 0.75 * RATE) {
            motion.advance(Double.NaN);
            turns = turnsNow(motion, 0);
        }
        double t = (double) motion.startFrame() / RATE;
        // three times 1 + 2 turns, 0.1 more, then held at 1 turn a second
        assertThat(turns).isCloseTo(9 + (t - 0.6), within(1e-9));
    }

    @Test
    void theShortestStepsFitTheLowestRate() {
        Profile busy = new Profile(List.of(new Profile.Repeat(Profile.Repeat.FOREVER, List.of(
                new Profile.Hold(10, 0.001), new Profile.Hold(30, 0.001)))));
        Motion motion = new Motion(busy, 10, 8000);
        for (int q = 0; q < 2000; q++) {
            motion.advance(q > 1000 && q % 2 == 0 ? 20 + q % 3 : Double.NaN);
            if (q == 1000) {
                // 8 s at 20 turns a second on average
                assertThat(turnsNow(motion, 0)).isCloseTo(20.0 * 1000 * Motion.QUANTUM / 8000, within(0.03));
            }
        }
    }

    @Test
    void aLoopForeverKeepsCount() {
        Profile loop = new Profile(List.of(new Profile.Repeat(Profile.Repeat.FOREVER,
                List.of(new Profile.Ramp(10, 30, 0.0123), new Profile.Ramp(30, 10, 0.0077)))));
        Motion motion = new Motion(loop, 10, RATE);
        for (int q = 0; q < 45_000; q++) {
            motion.advance(Double.NaN);
        }
        double seconds = (double) motion.startFrame() / RATE;
        double whole = Math.floor(seconds / 0.02);
        double rest = seconds - whole * 0.02;
        double inLoop = rest < 0.0123
                ? 10 * rest + 20 / 0.0123 * rest * rest / 2
                : 0.246 + 30 * (rest - 0.0123) - 20 / 0.0077 * (rest - 0.0123) * (rest - 0.0123) / 2;
        // 3000 rounds of 0.4 turns, each step's start rounded to about 1e-12 of a frame
        assertThat(turnsNow(motion, 0)).isCloseTo(whole * 0.4 + inLoop, within(1e-9));
    }
}
