package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.HexFormat;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import understudy.rig.OutputScale;

class OutputStageTest {

    private static final OutputScale TWO_VOLTS = new OutputScale(2, true);
    private static final int RATE_HZ = 48000;

    /** The bytes are two's complement and IEEE 754 as the standards have them, worked out by hand. */
    @ParameterizedTest
    @CsvSource({
        "PCM24,      1.0,  000040,   400000",
        "PCM24,     -1.0,  0000c0,   c00000",
        "PCM24,      2.0,  ffff7f,   7fffff",
        "PCM24,     -2.0,  010080,   800001",
        "PCM24,      9.0,  ffff7f,   7fffff",
        "PCM24,     -9.0,  010080,   800001",
        "PCM24,      0.0,  000000,   000000",
        "PCM24_IN_4, 1.0,  00004000, 00400000",
        "PCM24_IN_4,-1.0,  0000c0ff, ffc00000",
        "PCM24_IN_4,-9.0,  010080ff, ff800001",
        "PCM32,      1.0,  00000040, 40000000",
        "PCM32,     -1.0,  000000c0, c0000000",
        "PCM32,      9.0,  ffffff7f, 7fffffff",
        "PCM32,     -9.0,  01000080, 80000001",
        "FLOAT32,    1.0,  0000003f, 3f000000",
        "FLOAT32,   -9.0,  000080bf, bf800000",
    })
    void packsVoltsAsTheStandardsSay(SampleFormat format, double volts, String little, String big) {
        assertThat(hex(packOne(format, false, volts))).isEqualTo(little);
        assertThat(hex(packOne(format, true, volts))).isEqualTo(big);
    }

    /** 2.6 steps of 2 V / 2^23 are 3 steps, -2.4 are -2. */
    @Test
    void roundsToTheNearestStep() {
        assertThat(hex(packOne(SampleFormat.PCM24, true, 2.6 * 0x1p-22))).isEqualTo("000003");
        assertThat(hex(packOne(SampleFormat.PCM24, true, -2.4 * 0x1p-22))).isEqualTo("fffffe");
    }

    /**
     * With triangular dither the error of 16 bits has mean 0 and variance 1/4 step squared whatever the signal is: 1/12
     * for rounding, 2/12 for the two draws. Over n samples the mean strays by sigma = 0.5/sqrt(n), the variance by
     * less than sqrt(E[e^4]/n), and |e| is at most 1.5, so E[e^4] is at most 1.5^2/4. Five sigma is a chance of one in
     * a million, and the draws are fixed, so that it cannot come and go.
     */
    @ParameterizedTest
    @CsvSource({"0.0", "0.25", "0.5", "0.9", "-7.3"})
    void sixteenBitErrorDoesNotDependOnTheSignal(double steps) {
        int n = 200_000;
        double[][] volts = {new double[n]};
        Arrays.fill(volts[0], steps * 2 * 0x1p-15);
        var stage = new OutputStage(TWO_VOLTS, 1, 1, SampleFormat.PCM16, false, RATE_HZ, true);
        byte[] bytes = new byte[2 * n];
        stage.pack(volts, n, bytes);

        var codes = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asShortBuffer();
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            double error = codes.get(i) - steps;
            sum += error;
            squares += error * error;
        }
        assertThat(sum / n).isCloseTo(0, within(5 * 0.5 / Math.sqrt(n)));
        assertThat(squares / n).isCloseTo(0.25, within(5 * 0.75 / Math.sqrt(n)));
    }

    /**
     * The fade is (1 - cos(pi n/N))/2, N = 480 frames; a 32-bit code is within half a step of it, plus double
     * rounding.
     */
    @Test
    void fadesAlongHalfACosineOfTenMilliseconds() {
        var stage = new OutputStage(TWO_VOLTS, 1, 1, SampleFormat.PCM32, false, RATE_HZ, false);
        assertThat(ints(stage, 1.0, 100)).containsOnly(0);
        stage.fadeIn();
        int[] rising = ints(stage, 1.0, 600);
        for (int i = 0; i < 600; i++) {
            double gain = (1 - Math.cos(Math.PI * Math.min(i + 1, 480) / 480)) / 2;
            assertThat((double) rising[i]).isCloseTo(gain * 0x1p30, within(2.0));
        }
        stage.fadeOut();
        assertThat(stage.silent()).isFalse();
        int[] falling = ints(stage, 1.0, 480);
        for (int i = 0; i < 480; i++) {
            double gain = (1 + Math.cos(Math.PI * (i + 1) / 480)) / 2;
            assertThat((double) falling[i]).isCloseTo(gain * 0x1p30, within(2.0));
        }
        assertThat(stage.silent()).isTrue();
        assertThat(ints(stage, 1.0, 1000)).containsOnly(0);
    }

    /** The steepest step of half a cosine over N frames is sin(pi/2N) of the level, whichever way it is going. */
    @Test
    void aFadeCanTurnBackHalfwayWithoutAJump() {
        var stage = new OutputStage(TWO_VOLTS, 1, 1, SampleFormat.PCM32, false, RATE_HZ, false);
        stage.fadeIn();
        int[] up = ints(stage, 1.0, 200);
        stage.fadeOut();
        int[] down = ints(stage, 1.0, 300);
        double steepest = Math.sin(Math.PI / 960) * 0x1p30 + 2;
        assertThat((double) Math.abs(down[0] - up[199])).isLessThan(steepest);
        assertThat(down[199]).isZero();
        assertThat(down[299]).isZero();
    }

    @ParameterizedTest
    @CsvSource({"NaN", "Infinity", "-Infinity"})
    void aVoltThatIsNoNumberSilencesEveryChannelForGood(double poison) {
        var stage = new OutputStage(TWO_VOLTS, 2, 3, SampleFormat.PCM24, false, RATE_HZ, true);
        byte[] bytes = new byte[20 * stage.frameBytes()];
        double[][] volts = {ones(20), ones(20)};
        stage.pack(volts, 20, bytes);
        assertThat(stage.tripped()).isFalse();

        volts[1][7] = poison;
        Arrays.fill(bytes, (byte) 0x55);
        stage.pack(volts, 20, bytes);
        assertThat(stage.tripped()).isTrue();
        assertThat(stage.silent()).isTrue();
        assertThat(stage.trippedAtFrame()).isEqualTo(27);
        for (int frame = 0; frame < 20; frame++) {
            String want = frame < 7 ? "000040" + "000040" + "000000" : "000000000000000000";
            assertThat(hex(Arrays.copyOfRange(bytes, frame * 9, frame * 9 + 9))).isEqualTo(want);
        }

        volts[1][7] = 1;
        stage.fadeIn();
        Arrays.fill(bytes, (byte) 0x55);
        stage.pack(volts, 20, bytes);
        assertThat(bytes).containsOnly(0);
    }

    @Test
    void countsWhatItHadToHoldAtFullScale() {
        var stage = new OutputStage(TWO_VOLTS, 1, 1, SampleFormat.PCM24, false, RATE_HZ, true);
        stage.pack(new double[][] {{1, 2, -2, 2.001, -3, 0}}, 6, new byte[18]);
        assertThat(stage.clippedSamples()).as("full scale itself is no clipping").isEqualTo(2);
        assertThat(stage.peak()).isEqualTo(1.5);
    }

    @ParameterizedTest
    @EnumSource(SampleFormat.class)
    void packingAllocatesNothing(SampleFormat format) {
        var stage = new OutputStage(TWO_VOLTS, 2, 2, format, false, RATE_HZ, false);
        double[][] volts = {ones(512), ones(512)};
        byte[] bytes = new byte[512 * stage.frameBytes()];
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long id = Thread.currentThread().getId();
        for (int i = 0; i < 100; i++) {
            stage.pack(volts, 512, bytes);
            threads.getThreadAllocatedBytes(id);
        }
        long before = threads.getThreadAllocatedBytes(id);
        for (int i = 0; i < 100; i++) {
            stage.fadeIn();
            stage.pack(volts, 512, bytes);
            stage.fadeOut();
            stage.pack(volts, 300, bytes);
        }
        assertThat(threads.getThreadAllocatedBytes(id) - before).isZero();
    }

    @Property(tries = 60)
    void theCutIntoBlocksLeavesNoTrace(
            @ForAll SampleFormat format, @ForAll @IntRange(min = 1, max = 700) int block, @ForAll boolean poisoned) {
        int frames = 2000;
        double[][] volts = {new double[frames], new double[frames]};
        Sources.counter(2, RATE_HZ).render(volts, frames);
        if (poisoned) {
            volts[1][1500] = Double.NaN;
        }
        assertThat(packed(format, volts, frames, block)).isEqualTo(packed(format, volts, frames, frames));
    }

    private static byte[] packed(SampleFormat format, double[][] volts, int frames, int block) {
        var stage = new OutputStage(TWO_VOLTS, 2, 2, format, false, RATE_HZ, false);
        stage.fadeIn();
        ByteBuffer all = ByteBuffer.allocate(frames * stage.frameBytes());
        byte[] bytes = new byte[block * stage.frameBytes()];
        for (int at = 0; at < frames; at += block) {
            int n = Math.min(block, frames - at);
            double[][] part = {Arrays.copyOfRange(volts[0], at, at + n), Arrays.copyOfRange(volts[1], at, at + n)};
            all.put(bytes, 0, stage.pack(part, n, bytes));
        }
        return all.array();
    }

    private static byte[] packOne(SampleFormat format, boolean bigEndian, double volts) {
        var stage = new OutputStage(TWO_VOLTS, 1, 1, format, bigEndian, RATE_HZ, true);
        byte[] bytes = new byte[format.bytes()];
        stage.pack(new double[][] {{volts}}, 1, bytes);
        return bytes;
    }

    private static int[] ints(OutputStage stage, double volts, int frames) {
        double[][] block = {new double[frames]};
        Arrays.fill(block[0], volts);
        byte[] bytes = new byte[4 * frames];
        stage.pack(block, frames, bytes);
        int[] codes = new int[frames];
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asIntBuffer().get(codes);
        return codes;
    }

    private static double[] ones(int frames) {
        double[] volts = new double[frames];
        Arrays.fill(volts, 1);
        return volts;
    }

    private static String hex(byte[] bytes) {
        return HexFormat.of().formatHex(bytes);
    }
}
