package understudy.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import understudy.refusal.Refused;

class JsonTest {

    private enum Colour { RED }

    private record Inner(String z, int a) {}

    private record Outer(String text, double number, Double none, Optional<Inner> inner, Optional<Inner> nothing, OptionalDouble part,
            OptionalInt count, Instant at, Path file, Colour colour, List<Inner> list, Map<String, Object> map, boolean default_) {}

    @Test
    void aRecordIsAnObjectInTheOrderOfItsComponents() {
        Outer outer = new Outer("a \"b\" \u00e4", 8000.000000000001, Double.NaN, Optional.of(new Inner("z", 1)), Optional.empty(),
                OptionalDouble.empty(), OptionalInt.of(3), Instant.EPOCH, Path.of("x", "y"), Colour.RED, List.of(new Inner("l", 2)),
                Map.of("k", Arrays.asList(1, null)), true);
        assertThat(Json.text(outer).replaceAll("\\s+", " ")).isEqualTo("{ \"text\" : \"a \\\"b\\\" \\u00E4\", \"number\" : 8000,"
                + " \"none\" : null, \"inner\" : { \"z\" : \"z\", \"a\" : 1 }, \"nothing\" : null, \"part\" : null, \"count\" : 3,"
                + " \"at\" : \"1970-01-01T00:00:00Z\", \"file\" : \"x/y\", \"colour\" : \"RED\", \"list\" : [ { \"z\" : \"l\","
                + " \"a\" : 2 } ], \"map\" : { \"k\" : [ 1, null ] }, \"default\" : true }");
    }

    /** Neither a record nor a plain value: to guess its JSON from its methods would let anything out. */
    private static final class Secret {
        public String getSecret() {
            return "secret";
        }
    }

    @Test
    void whatIsNoRecordIsAnErrorOfTheCaller() {
        assertThatThrownBy(() -> Json.text(new Secret())).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Json.text(Map.of("a", List.of(new Secret())))).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void whatIsNoJsonIsRefusedAtItsPlace() {
        assertThat(Json.read("{\"b\": 1, \"a\": [true, null, 0.5]}", "x.json").keySet()).containsExactly("b", "a");
        assertThatThrownBy(() -> Json.read("{\"a\": 1,\n \"a\": 2}", "x.json")).isInstanceOf(Refused.class)
                .hasMessageStartingWith("x.json:2:");
        assertThatThrownBy(() -> Json.read("{\"a\": ", "x.json")).isInstanceOf(Refused.class).hasMessageStartingWith("x.json:1:");
    }
}
