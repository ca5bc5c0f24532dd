package understudy.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the reader makes of good files, compared with the model written out by hand. */
class PatternReaderTest {

    private static Pattern good(String name) throws IOException {
        return Corpus.read(Corpus.FOLDER.resolve("good").resolve(name + ".yaml")).value().orElseThrow();
    }

    private static Signal signal(String name) throws IOException {
        return good(name).outputs().get(0).signal();
    }

    private static Wheel wheel(String name) throws IOException {
        return ((WheelSignal) signal(name)).wheel();
    }

    @Test
    void theLeastFileGetsTheStatedDefaults() throws IOException {
        Pattern pattern = good("least");
        assertThat(pattern.id()).isEqualTo("least");
        assertThat(pattern.title()).isEqualTo("Bench wheel");
        assertThat(pattern.seed()).isEqualTo(1);
        assertThat(pattern.hazards()).isEmpty();
        assertThat(pattern.cautions()).isEmpty();
        assertThat(pattern.profile()).isEmpty();
        assertThat(pattern.faults()).isEmpty();
        Output crank = pattern.outputs().get(0);
        assertThat(crank.name()).isEqualTo("crank");
        assertThat(crank.ratio()).isEqualTo(1);
        assertThat(crank.phaseDeg()).isZero();
        assertThat(((WheelSignal) crank.signal()).sensor()).isEqualTo(new Hall(-1, 1));
        assertThat(pattern.speed()).isEqualTo(new Speed(SpeedUnit.RPM, Double.NaN, 800 / 60.0, 0, 8000 / 60.0));
    }

    @Test
    void aByteOrderMarkAndWindowsLinesChangeNothing() throws IOException {
        assertThat(good("byte-order-mark").outputs()).isEqualTo(good("least").outputs());
        assertThat(good("windows-lines").outputs()).isEqualTo(good("least").outputs());
        assertThat(good("windows-lines").purpose()).isEqualTo(good("least").purpose());
    }

    @Test
    void textsAreKept() throws IOException {
        Pattern pattern = good("all-texts");
        assertThat(pattern.hazards()).containsExactly(Hazard.CRANK, Hazard.WHEEL_SPEED, Hazard.ROAD_SPEED);
        assertThat(pattern.cautions()).containsExactly("Mind: the belt.", "Keep off.");
        assertThat(pattern.seed()).isEqualTo(7);
    }

    @Test
    void aHallToothLeadsAtItsPosition() throws IOException {
        Wheel wheel = wheel("least");
        assertThat(wheel.pitchDeg()).isEqualTo(10);
        assertThat(wheel.teeth()).hasSize(35);
        assertThat(wheel.teeth().get(0)).isEqualTo(new Tooth(1, 0, 5));
        assertThat(wheel.teeth().get(34)).isEqualTo(new Tooth(35, 340, 5));
    }

    @Test
    void aReluctorsToothIsCentredOnItsPosition() throws IOException {
        Wheel wheel = wheel("wheel-missing-at");
        assertThat(wheel.teeth()).hasSize(30);
        for (Tooth tooth : wheel.teeth()) {
            // One rounding each in leading = centre - 2.5 and back: 2 ulp of 360 are 1.1e-13.
            assertThat(tooth.centreDeg()).isCloseTo((tooth.number() - 1) * 10.0, within(1.2e-13));
            assertThat(tooth.widthDeg()).isEqualTo(5);
        }
        assertThat(wheel.teeth()).extracting(Tooth::number).doesNotContain(17, 18, 32, 33, 35, 36);
    }

    @Test
    void widthsAreOneForEachPosition() throws IOException {
        assertThat(wheel("wheel-widths").teeth()).containsExactly(
                new Tooth(1, 0, 40), new Tooth(2, 90, 10), new Tooth(3, 180, 20), new Tooth(4, 270, 10));
        assertThat(wheel("wheel-wide-tooth-over-gap").teeth()).containsExactly(
                new Tooth(1, 0, 40), new Tooth(2, 90, 150), new Tooth(4, 270, 10));
    }

    @Test
    void teethOneByOneAreCentredForAReluctorAndTheirLeastDistanceIsThePitch() throws IOException {
        Wheel wheel = wheel("wheel-teeth-at");
        assertThat(wheel.teeth()).containsExactly(new Tooth(1, -20, 40), new Tooth(2, 80, 20), new Tooth(3, 180, 40));
        assertThat(wheel.pitchDeg()).isEqualTo(90); // 0 to 90, 90 to 200, 200 to 360
    }

    @Test
    void edgesAreTeethAsDrawn() throws IOException {
        Wheel wheel = wheel("wheel-edges-at");
        assertThat(wheel.overDeg()).isEqualTo(720);
        assertThat(wheel.teeth()).containsExactly(new Tooth(1, 0, 40), new Tooth(2, 120, 40), new Tooth(3, 700, 10));
        assertThat(wheel.pitchDeg()).isEqualTo(35); // centres 20, 140, 705 and 740
    }

    @Test
    void aTurnedWheelComesBackIntoOneRoundByAngle() throws IOException {
        assertThat(wheel("wheel-720").teeth()).containsExactly(new Tooth(1, 60, 180));
        String text = """
                title: T
                purpose: P
                source: S
                speed: {default: 1 Hz, from: 1 Hz, to: 2 Hz}
                outputs: [{name: a, wheel: {teeth: 4, turned: %s, width: 10 deg}, hall: {low: 0 V, high: 1 V}}]
                """;
        Wheel late = ((WheelSignal) PatternReader.read("t", text.formatted("100 deg")).value().orElseThrow()
                .outputs().get(0).signal()).wheel();
        assertThat(late.teeth()).containsExactly(
                new Tooth(4, 10, 10), new Tooth(1, 100, 10), new Tooth(2, 190, 10), new Tooth(3, 280, 10));
        Wheel early = ((WheelSignal) PatternReader.read("t", text.formatted("-20 deg")).value().orElseThrow()
                .outputs().get(0).signal()).wheel();
        assertThat(early.teeth()).containsExactly(
                new Tooth(2, 70, 10), new Tooth(3, 160, 10), new Tooth(4, 250, 10), new Tooth(1, 340, 10));
    }

    @Test
    void reluctorsAreReadInTurnsPerSecondAndPitches() throws IOException {
        assertThat(((WheelSignal) signal("reluctor-reversed")).sensor())
                .isEqualTo(new Reluctor(0.6, 200 / 60.0, 1.7, 0.35, true));
        Reluctor mph = (Reluctor) ((WheelSignal) signal("speed-mph")).sensor();
        // 5 km/h over a wheel that rolls 76 in = 1.9304 m; three roundings of 1.1e-16 each.
        assertThat(mph.atHz()).isCloseTo(5 / 3.6 / 1.9304, within(1e-15));
    }

    @Test
    void ratiosAreNumbersOrFractions() throws IOException {
        assertThat(good("ratios").outputs()).extracting(Output::ratio)
                .containsExactly(1.0, 0.0, 0.5, 0.5, 17 / 44.0, 0.4, 16.0);
        assertThat(good("phase").outputs().get(0).phaseDeg()).isEqualTo(-90);
    }

    @Test
    void tonesBurstsAndCycles() throws IOException {
        assertThat(good("tones").outputs()).extracting(Output::signal).containsExactly(
                new Tone(Tone.Shape.TRIANGLE, 100, Double.NaN, 2, 0, 0),
                new Tone(Tone.Shape.SQUARE, Double.NaN, 3, 2, -0.5, 0.1),
                new Tone(Tone.Shape.SINE, 6700, Double.NaN, 0.02, 0, 0.5));
        assertThat(signal("bursts")).isEqualTo(new Bursts(6700, 0.0015, 1, 720, List.of(15.0, 195.0, 375.0, 555.0), 0.02));
        assertThat(signal("cycle")).isEqualTo(new DrawnCycle(720, List.of(new DrawnCycle.Point(0, 0),
                new DrawnCycle.Point(90, 1), new DrawnCycle.Point(90, -1), new DrawnCycle.Point(720, 0))));
    }

    @Test
    void profilesInTurnsPerSecond() throws IOException {
        assertThat(good("profile").profile()).isEqualTo(Optional.of(new Profile(List.of(
                new Profile.Crank(3, 2, 4, 0.25),
                new Profile.Ramp(Double.NaN, 800 / 60.0, 1),
                new Profile.Sweep(500 / 60.0, 100, 5),
                new Profile.Hold(10, 0.5),
                new Profile.Repeat(3, List.of(new Profile.Hold(0, 1), new Profile.Ramp(Double.NaN, 15, 60),
                        new Profile.Repeat(2, List.of(new Profile.Hold(1, 3600))))),
                new Profile.Follow()))));
        assertThat(good("profile-forever").profile().orElseThrow().steps().get(1))
                .isInstanceOfSatisfying(Profile.Repeat.class, r -> assertThat(r.times()).isEqualTo(Profile.Repeat.FOREVER));
    }

    @Test
    void faultsOfEveryKind() throws IOException {
        List<Fault> faults = good("faults").faults();
        assertThat(faults).containsExactly(
                new Fault.MissingTooth(at("missing tooth"), List.of(5)),
                new Fault.MissingTooth(at("two gone"), List.of(6, 7)),
                new Fault.WeakTooth(at("weak tooth"), List.of(8), 0.4),
                new Fault.DisplacedTooth(at("displaced tooth"), List.of(9), -2),
                new Fault.RunOut(at("run-out"), 0.2, 0.5, 90),
                new Fault.RunOut(at("wobble"), 0, 0.5, 0),
                new Fault.Dropout(at("dropout"), 10, 0.03),
                new Fault.Flicker(at("flicker"), 5, 0.002),
                new Fault.Noise(at("noise"), 0.05),
                new Fault.Hum(at("hum"), 0.1, 50),
                new Fault.Spikes(at("spikes"), 2, 50e-6, 0),
                new Fault.SwappedPolarity(at("swapped polarity")),
                new Fault.Level(at("level"), 1.5),
                new Fault.Shift(at("shift"), 20),
                new Fault.Shift(at("jumped back"), -20));
        for (Fault fault : faults) {
            Fault.Place elsewhere = new Fault.Place("other", "crank", When.ALWAYS, false);
            assertThat(fault.at(elsewhere).at(fault.place())).isEqualTo(fault);
        }
    }

    private static Fault.Place at(String name) {
        return new Fault.Place(name, "crank", When.ALWAYS, true);
    }

    @ParameterizedTest
    @CsvSource({"0, 0, Infinity, 1, 1", "1, 2, Infinity, 1, 1", "2, 0, 0.5, 1, 1", "3, 2, 5, 1, 1", "4, 0, Infinity, 3, 1",
        "5, 0, Infinity, 1, 1", "6, 0, Infinity, 1, 0.1", "7, 60, Infinity, 1, 0.005", "8, 2, Infinity, 3, 0.1"})
    void whenAFaultActs(int index, double from, double until, int everyTurns, double chance) throws IOException {
        assertThat(good("faults-when").faults().get(index).place().when())
                .isEqualTo(new When(from, until, everyTurns, chance));
    }

    @Test
    void faultsMayStartSwitchedOff() throws IOException {
        assertThat(good("faults-when").faults().get(9).place().on()).isFalse();
        assertThat(good("faults-when").faults().get(10).place().on()).isTrue();
    }

    @Test
    void idsAreFileNamesWithoutFolderAndEnding() {
        assertThat(List.of("a.yaml", "/x/a.yml", "x\\a.yaml", "a")).extracting(file -> new understudy.text.Source(file, "").id()).containsOnly("a");
    }
}
