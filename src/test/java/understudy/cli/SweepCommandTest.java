package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.cli.terminal.ExitCode;

/** Sweeps from the first line to the last. */
@Tag("real-time")
class SweepCommandTest extends SweepBench {

    @Test
    void eachSpeedIsToldAskedForAndJudged() {
        // 60 km/h: half of it is 30, where 60 - 10 % - half a step begins at 53.5
        String out = fine("20\n42\n30\n", sweep("--speeds", "600, 1200, 1800 rpm"));
        assertThat(out).contains("""
                Step 1 of 3: 600 rpm, 40 Hz; expected: 20 km/h, good from 18 to 22
                Displayed, in km/h: 20
                Right.

                Step 2 of 3: 1200 rpm, 80 Hz; expected: 40 km/h, good from 36 to 44
                Displayed, in km/h: 42
                Right.

                Step 3 of 3: 1800 rpm, 120 Hz; expected: 60 km/h, good from 54 to 66
                Displayed, in km/h: 30
                Not right: 30 km/h is shown; expected: 60 km/h, good from 54 to 66; half as
                much, as if every other tooth were lost, or twice the teeth declared.

                Step  Speed     Frequency  Expected  Displayed  Off by             Verdict
                1     600 rpm   40 Hz      20 km/h   20 km/h    0 km/h    0.0 %    right
                2     1200 rpm  80 Hz      40 km/h   42 km/h    +2 km/h   +5.0 %   right
                3     1800 rpm  120 Hz     60 km/h   30 km/h    -30 km/h  -50.0 %  half

                The module reads right from 600 rpm, 40 Hz, to 1200 rpm, 80 Hz (2 readings).
                Above, at 1800 rpm, 120 Hz, the verdict is: half.
                """);
    }

    @Test
    void whatIsNoNumberHasItsWords() throws IOException {
        String out = fine("nothing\n\nerratic\nstop\n", sweep("--speeds", "600 to 3000 by 600 rpm", "--csv", file("log.csv")));
        assertThat(out).contains("""
                Step  Speed     Frequency  Expected  Displayed  Off by             Verdict
                1     600 rpm   40 Hz      20 km/h   nothing    -20 km/h  -100.0 %  nothing
                2     1200 rpm  80 Hz      40 km/h   -          -         -         skipped
                3     1800 rpm  120 Hz     60 km/h   erratic    -         -         erratic
                """.replace("Off by             Verdict", "Off by              Verdict"))
                .contains("The module reads right at none of these speeds.")
                .contains("No scale can be learned: that takes two different numbers, at two different\nspeeds.")
                .contains("Not read: 2 of 5 speeds. To go on, give the same command once more, with:\n"
                        + "  --resume --csv \"" + file("log.csv") + "\"\n");
        // good from 17.5 to 22.5: the whole numbers in between are 18 to 22
        assertThat(Path.of(file("log.csv"))).hasContent("""
                step,time,speed (rpm),frequency (Hz),expected (km/h),good from (km/h),good to (km/h),displayed (km/h),deviation (km/h),deviation (%),verdict
                1,2026-03-01T12:00:00Z,600,40,20,18,22,nothing,-20,-100,nothing
                2,2026-03-01T12:00:00Z,1200,80,40,36,44,,,,skipped
                3,2026-03-01T12:00:00Z,1800,120,60,54,66,erratic,,,erratic
                """);
    }

    @Test
    void aSlipOfTheFingerIsAskedAgain() throws IOException {
        String out = fine("200\nno\n20 rpm\ntwenty\n12.4 mph\n40\n", sweep("--speeds", "600, 1200 rpm", "--csv", file("log.csv")));
        assertThat(out).contains("Is it 200 km/h, and not 20 km/h? yes or no: no\n").contains("\"twenty\" is not a road speed; write")
                .contains("12.4 mph is 19.96 km/h.");
        // 12.4 x 1.609344
        assertThat(Files.readAllLines(home.resolve("log.csv")).get(1)).startsWith("1,2026-03-01T12:00:00Z,600,40,20,18,22,19.9558656,");
    }

    @Test
    void backReadsTheLastOneOnceMore() {
        String out = fine("back\n20\n4\nback\n40\n60\n", sweep("--speeds", "600, 1200, 1800 rpm"));
        assertThat(out).contains("This is the first speed.\n").containsOnlyOnce("Step 1 of 3").contains("""
                1     600 rpm   40 Hz      20 km/h   20 km/h    0 km/h  0.0 %  right
                2     1200 rpm  80 Hz      40 km/h   40 km/h    0 km/h  0.0 %  right
                3     1800 rpm  120 Hz     60 km/h   60 km/h    0 km/h  0.0 %  right
                """);
        assertThat(words(out)).contains("to 1800 rpm, 120 Hz: at every speed that was read (3 readings).");
    }

    @Test
    void aDisplayThatLagsIsFoundOnTheWayBack() throws IOException {
        // 2 less than the truth on the way up, 2 more on the way down
        String out = fine("18\n38\n58\n80\n62\n42\n22\n", sweep("--speeds", "600 to 2400 by 600 rpm", "--return", "--json", file("all.json")));
        assertThat(out).contains("It averages: wait until it stands").contains("after going faster, km/h").contains("after going slower, km/h");
        Map<String, Object> json = JSON.std.mapFrom(Files.readString(home.resolve("all.json")));
        assertThat((List<?>) json.get("rows")).hasSize(7);
        assertThat(json).containsEntry("rightFrom", 600).containsEntry("rightTo", 2400).containsEntry("of", "wheel");
        // the truth, 0.5 km/h for each Hz, within the limits
        Map<?, ?> perHz = (Map<?, ?>) ((Map<?, ?>) json.get("learned")).get("perHz");
        assertThat(((Number) perHz.get("low")).doubleValue()).isLessThan(0.5);
        assertThat(((Number) perHz.get("high")).doubleValue()).isGreaterThan(0.5);
    }

    @Test
    void aDrawingInsteadOfTheOneOnTheScreen() {
        String out = fine("20\n42\n", sweep("--speeds", "600, 1200 rpm", "--plot", file("off.svg")));
        assertThat(out).contains("Drawn in").doesNotContain("displayed less expected");
        assertThat(home.resolve("off.svg")).isNotEmptyFile();
        assertThat(fine("20\n42\n", sweep("--speeds", "600, 1200 rpm"))).contains("displayed less expected, km/h");
        assertThat(fine("20\n", sweep("--speeds", "600, 1200 rpm", "--plot", file("none.svg")))).contains("Too little was read to draw");
        assertThat(home.resolve("none.svg")).doesNotExist();
    }

    @Test
    void theSignalGoesFromSpeedToSpeedWithoutAGap() throws Exception {
        Path sound = home.resolve("sweep.wav");
        fine("100\n200\n", "sweep", "sine", "--speeds", "100, 200 Hz", "--ramp", "300 ms", "--dwell", "200 ms", "--to", sound.toString());
        double[] volts = samples(sound);
        // without the fades of 480 frames at either end, which would tilt the line between two samples
        int last = volts.length - 1;
        while (volts[last] == 0) {
            last--;
        }
        List<Double> periods = new ArrayList<>();
        double before = Double.NaN;
        for (int i = 500; i < last - 500; i++) {
            if (volts[i - 1] <= 0 && volts[i] > 0) {
                double crossing = i - volts[i] / (volts[i] - volts[i - 1]);
                if (!Double.isNaN(before)) {
                    periods.add(crossing - before);
                }
                before = crossing;
            }
        }
        // At 48 kHz: 480 frames at 100 Hz, 240 at 200 Hz. A straight line between two samples of a sine of phase step w meets
        // zero within w * w / 16 of a frame. A sine of 1 V out of 1.41 V rises by 0.009 of full scale a frame at 100 Hz, and
        // 24 bits, dithered, err by up to 3 / 2 of a step of 1 / 2^23: 2e-5 of a frame. Both at either end of a period.
        double stepRad = 2 * Math.PI * 200 / 48_000;
        double hair = 2 * (stepRad * stepRad / 16 + 2e-5);
        assertThat(periods.get(0)).isCloseTo(480, within(hair));
        assertThat(periods.get(periods.size() - 1)).isCloseTo(240, within(hair));
        for (int i = 1; i < periods.size(); i++) {
            assertThat(periods.get(i)).isLessThanOrEqualTo(periods.get(i - 1) + hair).isBetween(240 - hair, 480 + hair);
        }
        // 0.2 s at 100 Hz, 0.3 s from there to 200 Hz, 0.2 s at 200 Hz: 20 + 45 + 40 periods at the least
        assertThat(periods).hasSizeGreaterThan(100);
        // Between, the speed rises by the same every frame: a period that ends at an angle of n turns begins at n - 1, and
        // with turns = v t + a t t / 2 the squares of the speed at crossings differ by 2 a. The mean speed of a period is that
        // in its middle, 1 / period, off by a * a * period^3 / 24, 1e-5 of it; so the slope between neighbours is a.
        double slope = 100 / 0.3 / 48_000 / 48_000; // turns per frame, per frame
        double seen = 0;
        for (int i = 1; i < periods.size(); i++) {
            double change = (1 / periods.get(i) - 1 / periods.get(i - 1)) / ((periods.get(i) + periods.get(i - 1)) / 2);
            boolean ramping = periods.get(i) < 450 && periods.get(i) > 260;
            if (ramping) {
                assertThat(change / slope).isBetween(0.97, 1.03);
                seen++;
            }
        }
        assertThat(seen).isGreaterThan(25);
    }

    private static double[] samples(Path sound) throws Exception {
        try (AudioInputStream in = AudioSystem.getAudioInputStream(sound.toFile())) {
            byte[] bytes = in.readAllBytes();
            double[] samples = new double[bytes.length / 3];
            for (int i = 0; i < samples.length; i++) {
                samples[i] = bytes[3 * i] & 255 | (bytes[3 * i + 1] & 255) << 8 | bytes[3 * i + 2] << 16;
            }
            return samples;
        }
    }

    @Test
    void aRigOnAnInputThatNobodyNamedIsRefused() {
        assertThat(Run.in(home).understudy("rig", "make", "bench", "--series", "10 kohm", "--shunt", "11 kohm").exitCode()).isZero();
        Run.Outcome outcome = Run.in(home).understudy("sweep", wheel, "--speeds", "600 rpm", "--rig", "bench", "--to", "silent");
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(outcome.err()).startsWith("--rig: the volts at the pins depend on the input too; add --input KIND");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "sweep fieldhand-4-speedomter|fieldhand-4-speedomter: there is no circuit or pattern of this name; did you mean fieldhand-4-speedometer?",
        "sweep x|x: there is no circuit or pattern of this name; shipped circuits are fieldhand-4-speedometer, ",
        "sweep WHEEL|sweep: it is not known which speeds to go through; give --speeds, like \"600 rpm, 6000 rpm\"",
        "sweep WHEEL --speeds 600_rpm --profile x|sweep: --speeds and --profile both say which speeds to go through; give one of them",
        "sweep WHEEL --speeds 600_rpm --dwell 1_h|--dwell:",
        "sweep WHEEL --speeds 600_rpm --csv log.txt|--csv: \"log.txt\" is no name for a table; give a name that ends in .csv",
        "sweep WHEEL --speeds 600_rpm --resume|--resume: it is not known which sweep; name its file with --csv",
        "sweep WHEEL --speeds 600_rpm --learned|--learned: it is not known which vehicle it is; add --vehicle, with the same words as when it was learned",
        "sweep WHEEL --speeds 600_rpm --learned --vehicle X|--learned: nothing was learned yet of circuit wheel on vehicle \"X\"; ",
        "sweep WHEEL --speeds 600_rpm --input resistive|--input: it says nothing without a rig; add --rig NAME, or leave it out",
        "sweep WHEEL --speeds 600_rpm --output cam|--output: the pattern has no output \"cam\"; it has crank",
        "sweep knock-86mm --output knock --speeds 600_rpm|knock-86mm: what a module counts of its output knock does not follow the speed; ",
        "sweep WHEEL --speeds 6000_rpm --reading shows:_table,_unit:_kPa,_points:_{1_Hz:_1_kPa,_2_Hz:_2_kPa}|--speeds: at 6000 rpm, 400 Hz the reading does not say what is shown; ",
    })
    void badInputIsRefusedAndNothingIsWritten(String command, String problem) throws IOException {
        String[] args = Arrays.stream(command.split(" ")).map(word -> word.replace("WHEEL", wheel).replace('_', ' ')).toArray(String[]::new);
        Run.Outcome outcome = Run.in(home).understudy(args);
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(outcome.err()).startsWith(problem);
        assertThat(outcome.out()).isEmpty();
        assertThat(ownFiles()).isEmpty();
    }
}
