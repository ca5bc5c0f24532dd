package understudy.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.refusal.Refusal;
import understudy.refusal.Location;

class ReadingReaderTest {

    private static Reading read(String text) {
        var result = ReadingReader.read(text, Location.named("reading"));
        assertThat(result.problems()).isEmpty();
        return result.value().orElseThrow();
    }

    @Test
    void vehicleSpeedFromTheShaft() {
        Reading reading = read("{shows: vehicle speed, unit: km/h, teeth: 17, axle-ratio: 4.1, tyre: 205/55R16, tolerance: 3 %, step: 1 km/h}");
        assertThat(reading.kind()).isEqualTo(Reading.Kind.VEHICLE_SPEED);
        Expected expected = reading.expected(602.7).orElseThrow();
        // see ScaleTest for the frequency; 3 % of 60 and half a step either way
        assertThat(expected.value()).isCloseTo(60, within(0.01));
        assertThat(expected.low()).isCloseTo(60 - 1.8 - 0.5, within(0.01));
        assertThat(expected.high()).isCloseTo(60 + 1.8 + 0.5, within(0.01));
        assertThat(reading.frequencyHz(60).orElseThrow()).isCloseTo(602.7, within(0.1));
    }

    @Test
    void wheelSpeedInMilesAnHour() {
        Reading reading = read("shows: wheel speed, unit: mph, teeth: 44, rolls: 1.927 m");
        // one turn a second is 1.927 m/s, 4.3106 mph
        assertThat(reading.expected(44).orElseThrow().value()).isCloseTo(1.927 * 3600 / 1609.344, within(1e-9));
        assertThat(reading.tolerance()).as("a tyre's").isEqualTo(new Tolerance(3, 0));
        assertThat(reading.step()).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "shows: engine speed, unit: rpm, teeth: 36 | 36 | 60",
        "shows: engine speed, unit: rpm, cylinders: 6 | 3 | 60",
        "shows: engine speed, unit: rpm, events: 1/2 | 1 | 120",
        "shows: frequency, unit: Hz | 159 | 159",
        "shows: vehicle speed, unit: mph, pulses-per-mile: 3600 | 5 | 5",
        "shows: vehicle speed, unit: km/h, pulses-per-km: 3600 | 5 | 5",
        "'shows: table, unit: kPa, points: {80 Hz: 0 kPa, 1 kHz: 92 kPa}' | 90 | 1",
        "'shows: table, unit: inHg, points: {80 Hz: 0 kPa, 1 kHz: 3386389 Pa}' | 1000 | 1000",
        "'shows: table, unit: g/s, points: {0 Hz: 0 g/s, 10 kHz: 200 g/s}' | 5000 | 100",
        "'shows: learned, unit: km/h, scale: 0.16 km/h per Hz, offset: -0.4 km/h' | 100 | 15.6",
        "'shows: learned, unit: km/h, scale: 0.1 mph per Hz' | 100 | 16.09344"})
    void everyKind(String text, double frequencyHz, double value) {
        // a handful of roundings of doubles
        assertThat(read(text).expected(frequencyHz).orElseThrow().value()).isCloseTo(value, within(1e-9 * (1 + value)));
    }

    @Test
    void tolerancesAddUp() {
        String table = "shows: table, unit: kPa, points: {80 Hz: 0 kPa, 159 Hz: 101 kPa}, tolerance: ";
        assertThat(read(table + "2 %").tolerance()).isEqualTo(new Tolerance(2, 0));
        assertThat(read(table + "2 kPa").tolerance()).isEqualTo(new Tolerance(0, 2));
        assertThat(read(table + "2 % + 1500 Pa").tolerance()).isEqualTo(new Tolerance(2, 1.5));
    }

    @Test
    void beyondATableNothingIsSaid() {
        Reading reading = read("shows: table, unit: kPa, points: {80 Hz: 0 kPa, 159 Hz: 101 kPa}");
        assertThat(reading.expected(79)).isEmpty();
        assertThat(reading.frequencyHz(102)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "shows: speed, unit: km/h | 1:8 | \"speed\" is not known; known here: wheel speed, vehicle speed, engine speed, frequency, table, learned",
        "shows: engine speed | 1:1 | a reading needs \"unit\"; add \"unit: km/h\"",
        "shows: engine speed, unit: kph, teeth: 36 | 1:28 | \"kph\" is no unit of a display; write one of: km/h, mph, rpm, Hz, g/s, kPa, inHg",
        "shows: engine speed, unit: km/h, teeth: 36 | 1:28 | engine speed is not shown in km/h; write one of: rpm",
        "shows: engine speed, unit: rpm | 1:1 | a reading lacks one of its keys; add one of: teeth, events, cylinders",
        "shows: engine speed, unit: rpm, events: 0 | 1:41 | without events nothing can be counted; write how many come in one turn of the crank",
        "shows: engine speed, unit: rpm, teeth: 36, rolls: 2 m | 1:51 | \"rolls\" does not go with what shows engine speed; remove it",
        "shows: wheel speed, unit: km/h, teeth: 44, tyre: 205/55R16, rolls: 2 m | 1:68 | a reading has both \"tyre\" and \"rolls\"; keep only one of: tyre, rolls",
        "shows: wheel speed, unit: km/h, teeth: 44, rolls: 200 m | 1:51 | 200 m is out of range; allowed are 100 mm to 20 m",
        "shows: vehicle speed, unit: km/h, teeth: 17, rolls: 2 m | 1:1 | a reading needs \"axle-ratio\"; add \"axle-ratio: 4.1\"",
        "shows: vehicle speed, unit: km/h, pulses-per-km: 0 | 1:50 | the number 0 is out of range; write a number from 1 to 1000000, without quotes and unit",
        "'shows: table, unit: kPa, points: {80 Hz: 0 kPa}' | 1:34 | there are 1 points; allowed are 2 to 200",
        "'shows: table, unit: kPa, points: {80 Hz: 5 kPa, 70 Hz: 9 kPa}' | 1:49 | this frequency does not come after the one before it; list the points by rising frequency",
        "'shows: table, unit: kPa, points: {80 Hz: 5 kPa, 90 Hz: 9 kPa, 95 Hz: 8 kPa}' | 1:70 | the values turn round here, so that one value would have two frequencies; let them all rise, or all fall",
        "'shows: table, unit: kPa, points: [80 Hz, 5 kPa]' | 1:34 | the points of a table are pairs of frequency and value, and there are none here; write pairs like \"80 Hz: 20 kPa\" below it, or within { }",
        "'shows: learned, unit: km/h, scale: 0 km/h per Hz' | 1:36 | a scale of 0 shows the same at every frequency; write one like 0.16 km/h per Hz",
        "'shows: learned, unit: km/h, scale: 0.16 km/h' | 1:36 | \"0.16 km/h\" is no scale; write one like 0.16 km/h per Hz",
        "'shows: frequency, unit: Hz, step: 0 Hz' | 1:35 | a display counts in steps above 0; write a step like 1 Hz",
        "'shows: frequency, unit: Hz, tolerance: 60 %' | 1:40 | 60 % is out of range; allowed are 0 % to 50 %",
        "'shows: frequency, unit: Hz, tolerance: 3 rpm' | 1:40 | \"3 rpm\" is a turning speed; write a frequency like 100 Hz"})
    void whatCantBeRead(String text, String place, String said) {
        var result = ReadingReader.read(text, Location.named("reading"));
        assertThat(result.problems()).extracting(Refusal::toString).containsExactly("reading:" + place + ": " + said);
    }

    /** Whatever is typed, there is an answer: a value or a problem, never an exception. */
    @Property(tries = 500)
    void nothingTypedBreaksIt(@ForAll("scraps") List<String> scraps) {
        String text = String.join("", scraps);
        assertThat(ReadingReader.read(text, Location.named("reading"))).isNotNull();
        assertThat(Displayed.parse(text, DisplayUnit.KMH)).isNotNull();
    }

    @Provide
    Arbitrary<List<String>> scraps() {
        return Arbitraries.of("shows: ", "table", "learned", "wheel speed", ", ", "unit: ", "kPa", "km/h", "points: ", "{", "}", "[", "]",
                "80 Hz: ", "5", "-", ".", "1e9", "0", " per Hz", "scale: ", "teeth: ", "tyre: ", "205/55R16", "tolerance: ", "%", "+",
                "step: ", "\"", "'", "&a ", "*a", "!", "\t", "\n", "\u2212", "events: 1/0").list().ofMaxSize(16);
    }

    /** What is written of a reading is read as the same scale; units and the like to the last bit, conversions nearly so. */
    @Property(tries = 300)
    void whatIsWrittenIsReadAgain(@ForAll("readings") Reading reading) {
        Reading again = read(reading.text());
        assertThat(again.kind()).isEqualTo(reading.kind());
        assertThat(again.unit()).isEqualTo(reading.unit());
        assertThat(again.step()).isCloseTo(reading.step(), within(1e-12 * reading.step()));
        for (double hz : new double[] {1, 33.3, 800}) {
            Optional<Expected> expected = reading.expected(hz);
            assertThat(again.expected(hz).isPresent()).isEqualTo(expected.isPresent());
            expected.ifPresent(e -> {
                // each number takes a few conversions, of 1.1e-16 each; values here stay below 1e6
                assertThat(again.expected(hz).orElseThrow().low()).isCloseTo(e.low(), within(1e-9));
                assertThat(again.expected(hz).orElseThrow().high()).isCloseTo(e.high(), within(1e-9));
            });
        }
    }

    @Provide
    Arbitrary<Reading> readings() {
        Arbitrary<Double> factor = Arbitraries.doubles().between(0.5, 50).ofScale(4);
        Arbitrary<Double> offset = Arbitraries.doubles().between(-20, 20).ofScale(4);
        return Combinators.combine(Arbitraries.of(0, 1, 2, 3, 4, 5, 6), Arbitraries.of(DisplayUnit.values()), factor, offset,
                Arbitraries.of(0.1, 0.5, 1.0, 5.0)).as((which, unit, by, add, step) -> switch (which) {
                    case 0 -> reading(Reading.Kind.WHEEL_SPEED, DisplayUnit.MPH, new Scale.Rolling(44, 1, by / 5), step);
                    case 1 -> reading(Reading.Kind.VEHICLE_SPEED, DisplayUnit.KMH, new Scale.Rolling(17, by, 1.927), step);
                    case 2 -> reading(Reading.Kind.VEHICLE_SPEED, DisplayUnit.MPH, Scale.PulsesPerKm.ofMile(by * 1000), step);
                    case 3 -> reading(Reading.Kind.ENGINE_SPEED, DisplayUnit.RPM, new Scale.EventsPerTurn(by), step);
                    case 4 -> reading(Reading.Kind.FREQUENCY, DisplayUnit.HERTZ, new Scale.Line(1, 0), step);
                    case 5 -> reading(Reading.Kind.TABLE, unit, new Scale.Points(List.of(
                            new Scale.Points.Point(10, unit.toBase(add)), new Scale.Points.Point(900, unit.toBase(add + by)))), step);
                    default -> reading(Reading.Kind.LEARNED, unit, new Scale.Line(unit.toBase(by / 100), unit.toBase(add)), step);
                });
    }

    private static Reading reading(Reading.Kind kind, DisplayUnit unit, Scale scale, double step) {
        return new Reading(kind, unit, scale, new Tolerance(2.5, 0.25), step);
    }
}
