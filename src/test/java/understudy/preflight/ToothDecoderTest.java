package understudy.preflight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rows of instants written down by hand, a turn a second, so that no signal and no comparator takes part. */
class ToothDecoderTest {

    private static ToothDecoder.Found judge(int positions, int missing, double[] seconds) {
        Setup setup = Bench.setup(Bench.coil(positions, missing, 0.3, 1, 1), Bench.rig(0), Bench.zeroCrossing());
        return new ToothDecoder(CycleEvents.of(setup), 1, 0).judge(seconds, 3);
    }

    private static double[] teeth(int positions, int missing, double latePitches) {
        List<Double> seconds = new ArrayList<>();
        for (int turn = 1; turn < 4; turn++) {
            for (int tooth = 0; tooth < positions - missing; tooth++) {
                seconds.add(turn + (tooth + latePitches) / positions);
            }
        }
        return array(seconds);
    }

    /** In the middle between neighbouring teeth: where a coil with swapped wires goes through zero the same way. */
    private static double[] swapped(int positions, int missing) {
        double[] right = teeth(positions, missing, 0);
        double[] wrong = new double[right.length - 1];
        for (int k = 0; k < wrong.length; k++) {
            wrong[k] = 0.5 * (right[k] + right[k + 1]);
        }
        return wrong;
    }

    private static double[] array(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    @ParameterizedTest
    @CsvSource({"60, 2, 0", "36, 1, 0", "36, 1, 0.2", "36, 1, -0.2", "12, 1, 0", "24, 1, 0.1"})
    void findsTheGapAndHowLateTheEdgesAre(int positions, int missing, double latePitches) {
        ToothDecoder.Found found = judge(positions, missing, teeth(positions, missing, latePitches));
        assertThat(found.verdict()).isEqualTo(DecodingVerdict.DECODED);
        assertThat(found.perTurn()).isEqualTo(positions - missing);
        assertThat(found.meanLateCycles()).isCloseTo(latePitches / positions, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"60, 2", "36, 1", "36, 2", "12, 1", "24, 1"})
    void swappedWiresCountRightButNeverSynchronise(int positions, int missing) {
        ToothDecoder.Found found = judge(positions, missing, swapped(positions, missing));
        assertThat(found.verdict()).isEqualTo(DecodingVerdict.SWAPPED);
        assertThat(found.perTurn()).isEqualTo(positions - missing);
    }

    @ParameterizedTest
    @CsvSource({"60, 2, 5", "36, 1, 34", "12, 1, 0"})
    void aMissedToothIsMissed(int positions, int missing, int missedTooth) {
        int n = positions - missing;
        double[] all = teeth(positions, missing, 0);
        List<Double> seen = new ArrayList<>();
        for (int k = 0; k < all.length; k++) {
            if (k % n != missedTooth) {
                seen.add(all[k]);
            }
        }
        ToothDecoder.Found found = judge(positions, missing, array(seen));
        assertThat(found.verdict()).isEqualTo(DecodingVerdict.MISCOUNTED);
        assertThat(found.perTurn()).isEqualTo(n - 1);
    }

    @ParameterizedTest
    @CsvSource({"36, 1, 7", "60, 2, 30"})
    void aToothThatStaysFarFromItsPlaceIsOutOfStep(int positions, int missing, int bentTooth) {
        int n = positions - missing;
        double[] bent = teeth(positions, missing, 0);
        for (int k = bentTooth; k < bent.length; k += n) {
            bent[k] += 0.3 / positions; // further than the quarter of a pitch that is allowed
        }
        assertThat(judge(positions, missing, bent).verdict()).isEqualTo(DecodingVerdict.OUT_OF_STEP);
    }

    @ParameterizedTest
    @CsvSource({"36, 1"})
    void nothingIsSilence(int positions, int missing) {
        assertThat(judge(positions, missing, new double[0]).verdict()).isEqualTo(DecodingVerdict.SILENT);
    }
}
