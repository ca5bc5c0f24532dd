package understudy.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.reading.Judged.Sign;

class DisplayedTest {

    /** 43 km/h within 3 % and half a step: 41.21 to 44.79. */
    private static final Expected EXPECTED = new Expected(43, 43 * 0.97 - 0.5, 43 * 1.03 + 0.5, 1, DisplayUnit.KMH);

    private static Displayed typed(String text) {
        return Displayed.parse(text, DisplayUnit.KMH, Optional.of(EXPECTED));
    }

    @ParameterizedTest
    @CsvSource({"43", "43 km/h", "43km/h", " 43.0 ", "'+43'"})
    void numbersInTheDisplaysUnit(String text) {
        assertThat(typed(text)).isEqualTo(new Displayed.Value(43, ""));
    }

    @Test
    void nothingAndAnyOrdinaryFaultAreTaken() {
        assertThat(typed("0")).isEqualTo(new Displayed.Value(0, ""));
        assertThat(typed("86")).isEqualTo(new Displayed.Value(86, ""));
    }

    @Test
    void anotherUnitIsConvertedAndSaidWhereItFits() {
        // 27 x 1.609344 = 43.452
        assertThat(typed("27 mph")).isInstanceOfSatisfying(Displayed.Value.class, value -> {
            assertThat(value.shown()).isCloseTo(43.452288, within(1e-9));
            assertThat(value.note()).isEqualTo("27 mph is 43.45 km/h");
        });
    }

    @Test
    void anotherUnitIsAskedAboutWhereItDoesNot() {
        assertThat(typed("43 mph")).isInstanceOfSatisfying(Displayed.Asked.class, asked ->
                assertThat(asked.question()).isEqualTo("43 mph is 69.2 km/h: does the display really show 43 mph, and not km/h?"));
        assertThat(Displayed.parse("43 mph", DisplayUnit.KMH)).isInstanceOf(Displayed.Asked.class);
    }

    @ParameterizedTest
    @CsvSource({"430, 'is it 430 km/h, and not 43 km/h?'", "43000 m, ''", "4300, ''",
        "300, '300 km/h is far from 43 km/h, which a good circuit would show: is that what the display shows?'"})
    void slipsAreAskedAboutOrRefused(String text, String question) {
        Displayed displayed = typed(text);
        assertThat(displayed instanceof Displayed.Asked asked ? asked.question() : "").isEqualTo(question);
        assertThat(displayed).isNotInstanceOf(Displayed.Value.class);
    }

    @Test
    void aHundredTimesTooLargeIsAskedAbout() {
        Expected idle = new Expected(80, 78.7, 81.3, 1, DisplayUnit.RPM);
        assertThat(Displayed.parse("8000", DisplayUnit.RPM, Optional.of(idle)))
                .isEqualTo(new Displayed.Asked("is it 8000 rpm, and not 80 rpm?", 8000));
    }

    @ParameterizedTest
    @CsvSource({"'', '\"km/h\" is not a road speed'", "abc, '\"abc\" is not a road speed'", "-3, '-3 km/h is out of range'",
        "'43,500', '\"43,500 km/h\" could be 43.500 or 43500'", "800 rpm, '\"800 rpm\" is a turning speed'"})
    void whatIsNoNumberOfThisDisplay(String text, String wrong) {
        assertThat(typed(text)).isInstanceOfSatisfying(Displayed.Refused.class,
                refused -> assertThat(refused.wrong()).isEqualTo(text.isEmpty() ? "nothing was given" : wrong));
    }

    @Test
    void aVacuumIsBelowNothing() {
        assertThat(Displayed.parse("-20", DisplayUnit.INCH_OF_MERCURY)).isEqualTo(new Displayed.Value(-20, ""));
    }

    @ParameterizedTest
    @CsvSource({"43, AS_EXPECTED", "42, AS_EXPECTED", "44, AS_EXPECTED", "44.79, AS_EXPECTED", "44.8, TOO_HIGH", "41, TOO_LOW",
        "0, NOTHING", "86, TWICE", "83, TWICE", "89, TWICE", "80, TOO_HIGH", "21, HALF", "22, HALF", "20, TOO_LOW", "130, TOO_HIGH"})
    void judged(double shown, Sign sign) {
        // twice: 86 within 2 x 1.29 + 0.5 = 3.08; half: 21.5 within 0.645 + 0.5
        assertThat(Judged.of(shown, EXPECTED).sign()).isEqualTo(sign);
    }

    @Test
    void theReasonHasBothNumbers() {
        assertThat(Judged.of(52, EXPECTED).reason())
                .isEqualTo("52 km/h is shown; expected: 43 km/h, good from 42 to 44; too high by 21 %");
    }

    @Test
    void soLittleCantBeToldFromNothing() {
        Expected creeping = new Expected(0.4, -0.1, 0.9, 1, DisplayUnit.KMH);
        assertThat(Judged.of(0, creeping).sign()).isEqualTo(Sign.CANNOT_TELL);
        assertThat(Judged.of(0, creeping).good()).isFalse();
        assertThat(Judged.of(0, new Expected(0.4, -0.1, 0.9, 1, DisplayUnit.KILOPASCAL)).good())
                .as("0 kPa is a pressure like any other").isTrue();
    }

    /** By brute force: every value a module may compute within its tolerance, rounded, lies among what is called good. */
    @Test
    void whateverRoundingMakesOfAGoodValueIsGood() {
        for (int i = 0; i <= 1000; i++) {
            double computed = 43 * (0.97 + 0.06 * i / 1000);
            assertThat(Judged.of(Math.rint(computed), EXPECTED).good()).as("%s", computed).isTrue();
        }
        assertThat(EXPECTED.leastShown()).isEqualTo(42);
        assertThat(EXPECTED.mostShown()).isEqualTo(44);
    }
}
