package understudy.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.refusal.Refused;

class TypedQuantityTest {

    private static final Range OHMS = new Range(0.001, 1e9, Unit.OHM);
    private static final Range VOLTS = new Range(0, 1000, Unit.VOLT);
    private static final Range FARADS = new Range(1e-12, 1, Unit.FARAD);
    private static final Range HERTZ = new Range(0, 1e7, Unit.HERTZ);

    /** Each as somebody at a bench types it; what it is worth is written beside it by hand. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"9.1k|9100", "4k7|4700", "4.7K|4700", "4,7k|4700", "100|100", "470R|470", "470 r|470", "2.2M|2200000",
        "5 ohms|5", "5OHM|5", "10 KOHM|10000", "0,5|0.5", "1.5 Mohm|1500000", "33 m|0.033"})
    void aResistorIsReadAsItIsTyped(String typed, double ohms) {
        assertThat(OHMS.typed(typed)).isCloseTo(ohms, within(1e-9 * ohms));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"1,5 V|1.5", "39,5|39.5", "1.5v|1.5", "200 MV|-", "200 mV|0.2", "200mv|0.2", ".5|0.5", ",5|0.5", "2 volts|2"})
    void voltsAreReadAsTheyAreTyped(String typed, String volts) {
        if (volts.equals("-")) {
            assertThatThrownBy(() -> VOLTS.typed(typed)).isInstanceOf(Refused.class);
        } else {
            assertThat(VOLTS.typed(typed)).isCloseTo(Double.parseDouble(volts), within(1e-12));
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"10u|10e-6", "10 UF|10e-6", "4n7|4.7e-9", "100nF|100e-9"})
    void aCapacitorIsReadAsItIsTyped(String typed, double farads) {
        assertThat(FARADS.typed(typed)).isCloseTo(farads, within(1e-9 * farads));
    }

    @ParameterizedTest
    @ValueSource(strings = {"0,5", "10", "0.1"})
    void aNumberAloneIsNoCapacitance(String typed) {
        assertThatThrownBy(() -> FARADS.typed(typed)).isInstanceOf(Refused.class);
    }

    /** A factor of a thousand million, or of a thousand, is nobody's guess. */
    @ParameterizedTest
    @ValueSource(strings = {"5 mhz", "5 MHZ", "1,500", "12,345 Hz", "1,2,3", "1.000,5"})
    void whatCouldBeTwoNumbersIsRefused(String typed) {
        assertThatThrownBy(() -> HERTZ.typed(typed)).isInstanceOf(Refused.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"5 MHz", "5MHz"})
    void aRightUnitIsTakenAsItStands(String typed) {
        assertThat(HERTZ.typed(typed)).isEqualTo(5e6);
    }

    /** Whatever is read strictly is read the same when it is typed. */
    @Property(tries = 2000)
    void whatIsStrictlyRightStaysWhatItIs(@ForAll @From("quantities") Quantity quantity) {
        String written = quantity.toString();
        String plain = TypedQuantity.plain(written, Unit.VOLT, List.of(quantity.unit().dimension()));
        assertThat(Quantity.parse(plain, quantity.unit().dimension())).isEqualTo(Quantity.parse(written, quantity.unit().dimension()));
        String comma = written.replace('.', ',');
        if (!comma.matches("[^,]*,\\d{3}\\D.*") ) {
            assertThat(Quantity.parse(TypedQuantity.plain(comma, Unit.VOLT, List.of(quantity.unit().dimension())), quantity.unit().dimension()))
                    .isEqualTo(Quantity.parse(written, quantity.unit().dimension()));
        }
    }

    /** Whatever is typed is read, or refused with what is allowed. */
    @Property(tries = 1000)
    void anythingIsReadOrRefused(@ForAll String typed) {
        try {
            VOLTS.typed(typed);
        } catch (Refused e) {
            assertThat(e.right()).isNotEmpty();
        }
    }

    @Provide
    Arbitrary<Quantity> quantities() {
        Arbitrary<Double> values = Arbitraries.doubles().between(0.001, 99_999).ofScale(3);
        return values.flatMap(value -> Arbitraries.of(Arrays.asList(Unit.values())).map(unit -> new Quantity(value, unit)));
    }
}
