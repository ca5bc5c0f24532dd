package understudy.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class PreferredTest {
    /** IEC 60063, table of the E96 series. */
    private static final String E96 = "100 102 105 107 110 113 115 118 121 124 127 130 133 137 140 143 147 150 154 158 "
            + "162 165 169 174 178 182 187 191 196 200 205 210 215 221 226 232 237 243 249 255 261 267 274 280 287 294 "
            + "301 309 316 324 332 340 348 357 365 374 383 392 402 412 422 432 442 453 464 475 487 499 511 523 536 549 "
            + "562 576 590 604 619 634 649 665 681 698 715 732 750 768 787 806 825 845 866 887 909 931 953 976";

    @Test
    void valuesAreThoseOfTheStandard() {
        List<Double> expected = Arrays.stream(E96.split(" ")).map(Double::valueOf).toList();
        assertThat(Preferred.E96.between(100, 999)).isEqualTo(expected);
        assertThat(Preferred.E12.between(1000, 10_000)).containsExactly(1000.0, 1200.0, 1500.0, 1800.0, 2200.0, 2700.0,
                3300.0, 3900.0, 4700.0, 5600.0, 6800.0, 8200.0, 10_000.0);
        assertThat(Preferred.E24.between(1, 9.9)).hasSize(24).containsAll(Preferred.E12.between(1, 9.9));
    }

    @Test
    void nextValueUp() {
        assertThat(Preferred.E12.atLeast(3.4e-6)).isEqualTo(3.9e-6);
        assertThat(Preferred.E12.atLeast(8.3)).isEqualTo(10);
        assertThat(Preferred.E24.atLeast(5100)).isEqualTo(5100);
    }
}
