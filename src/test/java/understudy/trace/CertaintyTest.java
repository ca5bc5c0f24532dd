package understudy.trace;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

class CertaintyTest {

    @Test
    void nothingIsCertain() {
        assertThat(Certainty.of(1)).isEqualTo("more than 99.9 %");
        assertThat(Certainty.doubt(1)).isEqualTo("less than 0.1 %");
        assertThat(Certainty.of(0)).isEqualTo("less than 0.1 %");
        assertThat(Certainty.doubt(0)).isEqualTo("more than 99.9 %");
    }

    @Test
    void whatWasDeclaredReadsAsItWasDeclared() {
        assertThat(Certainty.of(0.95)).isEqualTo("95 %");
        assertThat(Certainty.of(0.97)).isEqualTo("97 %");
        assertThat(Certainty.of(0.999)).isEqualTo("99.9 %");
        assertThat(Certainty.of(0.29)).isEqualTo("29 %");
    }

    @Property
    void neverMoreCertainThanItIs(@ForAll @Scale(6) @DoubleRange(min = 0.001, max = 0.999) double probability) {
        // a hair for the division by 100 on the way back
        assertThat(number(Certainty.of(probability))).isLessThanOrEqualTo(100 * probability + 1e-6);
        assertThat(number(Certainty.doubt(probability))).isGreaterThanOrEqualTo(100 * (1 - probability) - 1e-6);
        // a whole per cent is the coarsest
        assertThat(number(Certainty.of(probability))).isGreaterThan(100 * probability - 1);
        assertThat(number(Certainty.doubt(probability))).isLessThan(100 * (1 - probability) + 1);
    }

    private static double number(String words) {
        return Double.parseDouble(words.replace(" %", ""));
    }
}
