package understudy.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.refusal.Refused;

class QuantityTest {
    private static final Dimension[] ALL = Dimension.values();

    /** Base values by hand; each literal is the double nearest to the exact decimal, so equality needs no tolerance. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "800 rpm | 800", "800rpm | 800", "45 km/h | 45", "30 mph | 48.28032", "1 kHz | 1000", "2 MHz | 2e6",
        "100 mHz | 0.1", "2.5 V | 2.5", "-1.2 V | -1.2", "+3V | 3", "120 us | 120e-6", "120 µs | 120e-6",
        "120 μs | 120e-6", ".5 ms | 0.0005", "2 min | 120", "24 h | 86400", "3 deg | 3", "3° | 3", "15 % | 15",
        "1.927 m | 1.927", "76 in | 1.9304", "20 mm | 0.02", "3 cm | 0.03", "1 mA | 0.001", "4.7 kohm | 4700",
        "4.7 kΩ | 4700", "47 nF | 47e-9", "10 mH | 0.01", "0.5 W | 0.5", "101 kPa | 101000", "30 inHg | 101591.67",
        "12 g/s | 12", "5 kg/s | 5000", "0 V | 0", "−5 deg | -5", "2. s | 2"})
    void readsWhatPeopleWrite(String written, double base) {
        assertThat(Quantity.parse(written, ALL).base()).isEqualTo(base);
    }

    @ParameterizedTest
    @CsvSource({"4k7, 4700", "2M2, 2200000", "4R7, 4.7", "470R, 470", "10k, 10000", "1M, 1000000", "4k7 ohm, 4700", "2m2, 0.0022"})
    void readsResistancesAsMarkedOnThePart(String written, double ohms) {
        assertThat(Quantity.parse(written, Dimension.RESISTANCE)).isEqualTo(new Quantity(ohms, Unit.OHM));
    }

    @ParameterizedTest
    @CsvSource({"4n7, 4.7e-9", "2u2, 2.2e-6", "2µ2, 2.2e-6", "100n, 100e-9", "4n7 F, 4.7e-9"})
    void readsCapacitancesAsMarkedOnThePart(String written, double farads) {
        assertThat(Quantity.parse(written, Dimension.CAPACITANCE)).isEqualTo(new Quantity(farads, Unit.FARAD));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "800 | \"800\" has no unit; write a voltage like 2.5 V",
        "fast | \"fast\" is not a voltage; write a voltage like 2.5 V",
        "2,5 V | \"2,5 V\" has a comma in the number; a number has a decimal point, and nothing between thousands, like 1.5 or 12000",
        "1,000 V | \"1,000 V\" has a comma in the number; a number has a decimal point, and nothing between thousands, like 1.5 or 12000",
        "5 volts | the unit \"volts\" is not known; write a voltage like 2.5 V",
        "5 v | the unit \"v\" has the wrong capitals; write 5 V",
        "5 MV | the unit \"MV\" has the wrong capitals; write 5 mV",
        "5 s | \"5 s\" is a time; write a voltage like 2.5 V",
        "4k7 | the unit \"k7\" is not known; write a voltage like 2.5 V",
        "NaN V | \"NaN V\" is not a voltage; write a voltage like 2.5 V",
        "Infinity V | \"Infinity V\" is not a voltage; write a voltage like 2.5 V",
        "1e3 V | the unit \"e3 V\" is not known; write a voltage like 2.5 V",
        "--5 V | \"--5 V\" is not a voltage; write a voltage like 2.5 V",
        "1 000 V | the unit \"000 V\" is not known; write a voltage like 2.5 V",
        "'' | \"\" is not a voltage; write a voltage like 2.5 V",
        "10000000000000000 V | the number 1.0E16 V is absurd; sizes from 1e-15 to 1e15 can be handled",
        "0.0000000000000001 V | the number 1.0E-16 V is absurd; sizes from 1e-15 to 1e15 can be handled"})
    void saysWhatIsWrongAndWhatWouldBeRight(String written, String message) {
        assertThatThrownBy(() -> Quantity.parse(written, Dimension.VOLTAGE))
                .isInstanceOf(Refused.class).hasMessage(message);
    }

    @Test
    void refusesTextThatIsTooLongBeforeLookingAtIt() {
        assertThatThrownBy(() -> Quantity.parse("1".repeat(100_000) + " V", Dimension.VOLTAGE))
                .hasMessageStartingWith("this is too long");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "0.000120 | s | 120 us", "4700 | ohm | 4.7 kohm", "0.5 | m | 500 mm", "800 | rpm | 800 rpm", "0 | V | 0 V",
        "-0.02 | V | -20 mV", "1000 | Hz | 1 kHz", "13.3333333 | Hz | 13.33 Hz", "99.996 | V | 100 V", "0.09 | s | 90 ms",
        "0.0000000001 | V | 0.1 nV", "123456 | rpm | 123500 rpm"})
    void printsWithTheFittingPrefixAndFourDigits(double value, String symbol, String printed) {
        Unit unit = Arrays.stream(Unit.values()).filter(u -> u.symbol().equals(symbol)).findFirst().orElseThrow();
        assertThat(new Quantity(value, unit).rounded(4)).isEqualTo(printed);
    }

    @Property
    void printingAndReadingGivesTheSameNumber(@ForAll("quantities") Quantity quantity) {
        Quantity back = Quantity.parse(quantity.toString(), quantity.unit().dimension());
        assertThat(back).isEqualTo(quantity);
    }

    @Property
    void roundingChangesLessThanHalfADigit(@ForAll("quantities") Quantity quantity) {
        Quantity back = Quantity.parse(quantity.rounded(4), quantity.unit().dimension());
        // Half a unit of the fourth of four digits is at most 5e-4 of the number (1.000 is the least mantissa).
        assertThat(Math.abs(back.value() - quantity.value())).isLessThanOrEqualTo(5e-4 * Math.abs(quantity.value()));
    }

    @Property
    void everyLocalePrintsTheSame(@ForAll("quantities") Quantity quantity) {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.ROOT);
            String plain = quantity.toString();
            for (String tag : List.of("de-DE", "ar-EG-u-nu-arab", "hi-IN-u-nu-deva", "tr-TR")) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                assertThat(quantity.toString()).isEqualTo(plain);
                assertThat(Quantity.parse(plain, quantity.unit().dimension())).isEqualTo(quantity);
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    @Property
    void readingAnyTextGivesAQuantityOrAMessage(@ForAll String text) {
        try {
            assertThat(Quantity.parse(text, ALL).unit()).isNotNull();
        } catch (Refused e) {
            assertThat(e.wrong()).isNotBlank();
            assertThat(e.right()).isNotBlank();
        }
    }

    /** Sizes over the whole range that can be written, 1e-15 to 1e15, as many in each decade, and their negatives. */
    @Provide
    Arbitrary<Quantity> quantities() {
        Arbitrary<Double> sizes = Arbitraries.integers().between(-15, 14)
                .flatMap(decade -> Arbitraries.doubles().ofScale(15).between(1, 10)
                        .map(mantissa -> mantissa * Math.pow(10, decade)))
                .filter(size -> size >= 1e-15 && size <= 1e15);
        Arbitrary<Double> values = sizes.flatMap(size -> Arbitraries.of(size, -size)).injectNull(0.02)
                .map(value -> value == null ? Double.valueOf(0) : value);
        return values.flatMap(value -> Arbitraries.of(Unit.values()).map(unit -> new Quantity(value, unit)));
    }

    @Test
    void aRangeIncludesItsEndsAndNamesThem() {
        Range range = new Range(0.001, 60, Unit.SECOND);
        assertThat(range.parse("1 ms")).isEqualTo(0.001);
        assertThat(range.parse("1 min")).isEqualTo(60);
        assertThatThrownBy(() -> range.parse("61 s")).hasMessage("61 s is out of range; allowed are 1 ms to 60 s");
        assertThatThrownBy(() -> range.parse("0 s")).hasMessage("0 s is out of range; allowed are 1 ms to 60 s");
    }

    @Test
    void everyDimensionHasABaseUnitAndAnExampleThatReads() {
        for (Dimension dimension : ALL) {
            assertThat(Quantity.parse(dimension.example(), dimension).unit().dimension()).isEqualTo(dimension);
            Unit first = Arrays.stream(Unit.values()).filter(u -> u.dimension() == dimension).findFirst().orElseThrow();
            assertThat(new Quantity(1, first).base()).isEqualTo(1);
        }
    }
}
