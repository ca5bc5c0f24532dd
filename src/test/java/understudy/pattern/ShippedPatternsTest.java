package understudy.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import understudy.refusal.Result;

class ShippedPatternsTest {
    private static final double NOMINAL_PEAK_VOLTS = Math.sqrt(2); // a full-scale sine of 1.0 V rms

    static List<Path> shipped() {
        return Corpus.files(Corpus.SHIPPED);
    }

    private static Pattern read(Path file) throws IOException {
        Result<Pattern> result = Corpus.read(file);
        assertThat(result.problems()).isEmpty();
        return result.value().orElseThrow();
    }

    @Test
    void thePromisedPatternsAreThere() {
        assertThat(shipped()).extracting(Corpus::name).contains("sine", "triangle", "square", "crank-60-2-hall",
                "crank-60-2-vr", "crank-36-1-vr", "crank-36-1-cam-1-hall", "crank-36-2-2-2-vr", "distributor-24-1-vr",
                "wheel-speed-44-vr", "wheel-speeds-four-44-vr", "output-shaft-17-vr", "knock-86mm");
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void readerAndSchemaAcceptIt(Path file) throws IOException {
        read(file);
        assertThat(Corpus.judge(Corpus.schema(), file)).isEmpty();
        assertThat(Files.readString(file)).startsWith("# yaml-language-server: $schema=pattern.schema.json\n");
        assertThat(Corpus.name(file)).matches("[a-z][a-z0-9]*(-[a-z0-9]+)*");
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void itNamesItsHazardsAndAsksToCompareWhatIsOnlyUsual(Path file) throws IOException {
        Pattern pattern = read(file);
        if (pattern.outputs().stream().anyMatch(output -> output.signal() instanceof WheelSignal)) {
            assertThat(pattern.hazards()).isNotEmpty();
            assertThat(pattern.source()).contains("known-good");
        }
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void itStartsHealthy(Path file) throws IOException {
        assertThat(read(file).faults()).noneMatch(fault -> fault.place().on());
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void itFitsANominalOutput(Path file) throws IOException {
        for (Output output : read(file).outputs()) {
            assertThat(peakVolts(output.signal())).as(output.name()).isLessThan(NOMINAL_PEAK_VOLTS);
        }
    }

    private static double peakVolts(Signal signal) {
        if (signal instanceof Tone tone) {
            return tone.peakToPeakVolts() / 2 + Math.abs(tone.offsetVolts());
        } else if (signal instanceof Bursts bursts) {
            return bursts.peakVolts() + 6 * bursts.noiseVolts(); // beyond 6 sigma once in 1e9 samples
        } else if (signal instanceof DrawnCycle cycle) {
            return cycle.points().stream().mapToDouble(point -> Math.abs(point.volts())).max().orElseThrow();
        }
        WheelSignal wheel = (WheelSignal) signal;
        return wheel.sensor() instanceof Hall hall ? Math.max(Math.abs(hall.lowVolts()), Math.abs(hall.highVolts()))
                : reluctorPeakVolts(wheel.wheel(), (Reluctor) wheel.sensor());
    }

    /**
     * By brute force: the derivative of teeth smoothed by a Gaussian is a Gaussian at each edge, up at the leading and
     * down at the trailing one. The largest value of the wheel, in units of that of evenly spaced teeth, times half the
     * ceiling.
     */
    private static double reluctorPeakVolts(Wheel wheel, Reluctor reluctor) {
        int positions = (int) Math.round(wheel.overDeg() / wheel.pitchDeg());
        List<Tooth> all = new ArrayList<>();
        for (int i = 0; i < positions; i++) {
            all.add(new Tooth(i + 1, i * wheel.pitchDeg(), wheel.teeth().get(0).widthDeg()));
        }
        double sigmaDeg = reluctor.polePitches() * wheel.pitchDeg();
        double ratio = largest(wheel.teeth(), wheel.overDeg(), sigmaDeg) / largest(all, wheel.overDeg(), sigmaDeg);
        return reluctor.ceilingVolts() / 2 * ratio;
    }

    private static double largest(List<Tooth> teeth, double overDeg, double sigmaDeg) {
        double largest = 0;
        for (double angle = 0; angle < overDeg; angle += sigmaDeg / 20) {
            double slope = 0;
            for (Tooth tooth : teeth) {
                for (int round = -1; round <= 1; round++) {
                    slope += bell((angle - tooth.leadingDeg() - round * overDeg) / sigmaDeg)
                            - bell((angle - tooth.trailingDeg() - round * overDeg) / sigmaDeg);
                }
            }
            largest = Math.max(largest, Math.abs(slope));
        }
        return largest;
    }

    private static double bell(double x) {
        return Math.exp(-x * x / 2);
    }

    /** Geometry as the trade's tables have it: how many teeth, and how many of each distance from one to the next. */
    @ParameterizedTest
    @CsvSource({
        "crank-60-2-hall, crank, 58, 6.0x57 18.0x1", "crank-60-2-vr, crank, 58, 6.0x57 18.0x1",
        "crank-36-1-vr, crank, 35, 10.0x34 20.0x1", "crank-36-1-cam-1-hall, crank, 35, 10.0x34 20.0x1",
        "crank-36-1-cam-1-hall, cam, 1, 720.0x1", "crank-36-2-2-2-vr, crank, 30, 10.0x27 30.0x3",
        "distributor-24-1-vr, angle, 24, 15.0x24", "distributor-24-1-vr, reference, 1, 360.0x1",
        "wheel-speed-44-vr, wheel, 44, 8.1818x44", "wheel-speeds-four-44-vr, rear-left, 44, 8.1818x44",
        "output-shaft-17-vr, output-shaft, 17, 21.1765x17", "knock-86mm, crank, 58, 6.0x57 18.0x1"})
    void geometryIsAsNamed(String id, String output, int count, String distances) throws IOException {
        Wheel wheel = ((WheelSignal) read(Corpus.SHIPPED.resolve(id + ".yaml")).outputs().stream()
                .filter(o -> o.name().equals(output)).findFirst().orElseThrow().signal()).wheel();
        List<Double> centres = wheel.teeth().stream().map(Tooth::centreDeg).sorted(Comparator.naturalOrder()).toList();
        assertThat(centres).hasSize(count);
        Map<Double, Integer> counted = new TreeMap<>();
        for (int i = 0; i < count; i++) {
            double next = i + 1 < count ? centres.get(i + 1) : centres.get(0) + wheel.overDeg();
            counted.merge(Math.round((next - centres.get(i)) * 1e4) / 1e4, 1, Integer::sum);
        }
        assertThat(counted.entrySet().stream().map(e -> e.getKey() + "x" + e.getValue()).collect(Collectors.joining(" ")))
                .isEqualTo(distances);
    }

    /** Two of the three gaps of 36-2-2-2 lie 20 degrees apart, about a single tooth. */
    @Test
    void the3622GapsLieAsStated() throws IOException {
        Wheel wheel = ((WheelSignal) read(Corpus.SHIPPED.resolve("crank-36-2-2-2-vr.yaml")).outputs().get(0).signal()).wheel();
        assertThat(wheel.teeth()).extracting(Tooth::number).doesNotContain(17, 18, 32, 33, 35, 36).contains(34);
    }

    /** Ratios in the bend: radius 40 m, track 1.5 m, wheelbase 2.6 m, rounded to four digits in the file. */
    @Test
    void theFourWheelsDriveTheStatedBend() throws IOException {
        Map<String, Double> ratios = read(Corpus.SHIPPED.resolve("wheel-speeds-four-44-vr.yaml")).outputs().stream()
                .collect(Collectors.toMap(Output::name, Output::ratio));
        assertThat(ratios).isEqualTo(Map.of(
                "front-left", round4(Math.hypot(39.25, 2.6) / 40), "front-right", round4(Math.hypot(40.75, 2.6) / 40),
                "rear-left", round4(39.25 / 40), "rear-right", round4(40.75 / 40)));
    }

    private static double round4(double ratio) {
        return Math.round(ratio * 1e4) / 1e4;
    }

    /** 900/(pi r) for a bore of 86 mm, and the first circular mode k c/(pi B) for 850 to 950 m/s around it. */
    @Test
    void knockRingsWhereTheBoreSays() throws IOException {
        Bursts knock = (Bursts) read(Corpus.SHIPPED.resolve("knock-86mm.yaml")).outputs().get(1).signal();
        assertThat(knock.frequencyHz()).isEqualTo(Math.round(900 / (Math.PI * 0.043) / 10) * 10.0);
        assertThat(knock.frequencyHz()).isBetween(6100.0, 6700.0);
    }
}
