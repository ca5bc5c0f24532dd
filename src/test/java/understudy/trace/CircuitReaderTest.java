package understudy.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.reading.Reading;
import understudy.reading.ReadingReader;
import understudy.refusal.Result;
import understudy.text.Source;
import understudy.refusal.Refused;
import understudy.refusal.Location;

/** Circuit files are read whole, or refused with everything that is wrong with them. */
class CircuitReaderTest {

    private static final Path BAD = Path.of("src/test/resources/circuits/bad");

    static List<Path> bad() {
        try (Stream<Path> files = Files.list(BAD)) {
            return files.filter(file -> file.toString().endsWith(".yaml")).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Result<Circuit> read(String text) {
        return CircuitReader.read(new Source("test.yaml", text));
    }

    @ParameterizedTest
    @MethodSource("bad")
    void aBadFileIsRefusedInTheseWords(Path file) throws IOException {
        String said = CircuitReader.read(new Source(file.getFileName().toString(), Files.readString(file))).problems().stream()
                .map(problem -> problem + "\n").collect(Collectors.joining());
        assertThat(said).isNotEmpty().isEqualTo(Files.readString(Path.of(file.toString().replace(".yaml", ".expected"))));
    }

    @Test
    void everyBadFileIsOfTheCorpus() {
        assertThat(bad()).hasSizeGreaterThanOrEqualTo(30);
    }

    private static final String FILE = """
            title: Test \uD83D\uDE9C circuit
            source: Made up.
            pattern: sine
            reading: READING
            # what follows the reading
            path: [{point: a, reach: 1 min}, {wire: b}, {point: c, reach: 1 min}]
            """;

    @ParameterizedTest
    @ValueSource(strings = {"{shows: frequency, unit: Hz}", "\n  shows: frequency\n  unit: Hz", "\n    {shows: frequency,\n     unit: Hz}",
        "&here {shows: frequency, unit: Hz}"})
    void anotherReadingIsPutInThePlaceOfTheOldOne(String written) {
        Reading learned = ReadingReader.read("shows: learned, unit: mph, scale: 0.12 mph per Hz, offset: -1 mph", Location.named("test")).value().orElseThrow();
        for (String start : new String[] {"", "\ufeff"}) {
            Source before = new Source("test.yaml", start + FILE.replace("READING", written));
            Source after = CircuitReader.expecting(before, learned);
            Circuit circuit = CircuitReader.read(after).value().orElseThrow();
            // -1 mph at 0 Hz and 0.12 more for each Hz; rounding of doubles
            assertThat(circuit.reading().expected(100).orElseThrow().value()).isCloseTo(11, within(1e-9));
            assertThat(circuit.title()).isEqualTo("Test \uD83D\uDE9C circuit");
            assertThat(circuit.points()).hasSize(2);
            assertThat(after.text()).startsWith(start + "title").contains("\npath: [{point: a");
        }
    }

    @Test
    void aReadingThatIsOnlyReferredToIsLeftAlone() {
        Reading learned = ReadingReader.read("shows: learned, unit: mph, scale: 0.12 mph per Hz", Location.named("test")).value().orElseThrow();
        String text = FILE.replace("source: Made up.", "source: &text Made up.").replace("READING", "{shows: &kind frequency, unit: Hz}")
                + "vehicle: *kind\n";
        assertThat(read(text).problems()).isEmpty();
        assertThatThrownBy(() -> CircuitReader.expecting(new Source("test.yaml", text), learned)).isInstanceOf(Refused.class)
                .hasMessageContaining("test.yaml: its reading can't be replaced");
    }

    @Test
    void theShippedCircuitsAreReadAndGoTogetherWithTheirPatterns() {
        assertThat(CircuitLibrary.open().ids()).contains("fieldhand-4-speedometer", "fieldhand-4-wheel-rear-left")
                .allSatisfy(id -> assertThat(TestJobs.subject(id)).satisfies(subject -> {
                    assertThat(subject.circuit().id()).isEqualTo(id);
                    assertThat(subject.expected(subject.speedHz()).value()).isPositive();
                }));
    }

    @Test
    void whatTheFileSaysIsInTheCircuit() {
        Circuit circuit = read("""
                title: T
                vehicle: V
                source: S
                pattern: output-shaft-17-vr
                output: output-shaft
                speed: 900 rpm
                input: reluctor-adaptive
                pin: {from: -0.5 V, to: 1 V}
                reading: {shows: frequency, unit: Hz}
                reference: other.yaml
                wrongly-bad: 4 %
                wrongly-good: 6 %
                confidence: 90 %
                odds: {sensor: 5, module: 0.5}
                path:
                  - {point: a, reach: 90 s}
                  - {connector: b}
                  - {point: c, inject: no}
                  - {splice: d}
                  - {point: e, reach: 1 h}
                  - {wire: f, odds: 7}
                  - {point: g, reach: 2 min}
                """).value().orElseThrow();
        assertThat(circuit.points()).containsExactly(new Point("a", 1.5, true), new Point("c", 1, false),
                new Point("e", 60, true), new Point("g", 2, true));
        assertThat(circuit.segments()).containsExactly(new Segment(Segment.Kind.CONNECTOR, "b", 6),
                new Segment(Segment.Kind.SPLICE, "d", 4), new Segment(Segment.Kind.WIRE, "f", 7));
        assertThat(circuit.suspects()).extracting(Suspect::odds).containsExactly(5.0, 6.0, 4.0, 7.0, 0.5);
        assertThat(circuit.suspects()).extracting(Suspect::index).containsExactly(0, 1, 2, 3, 4);
        assertThat(circuit.wronglyBad()).isEqualTo(0.04);
        assertThat(circuit.wronglyGood()).isEqualTo(0.06);
        assertThat(circuit.confidence()).isEqualTo(0.9);
        // nobody can inject between b and d: they stand or fall together, and begin as the likeliest with 10 of 22.5
        Route.Group likeliest = circuit.route().likeliest(circuit.odds());
        assertThat(List.of(likeliest.first(), likeliest.last())).containsExactly(1, 2);
        assertThat(likeliest.probability()).isCloseTo(10 / 22.5, within(1e-12)); // a few roundings
        // a place in words reaches over all of them, to the far side of the last
        List<Suspect> all = circuit.suspects();
        assertThat(circuit.between(all.subList(1, 3))).isEqualTo("between a and e");
        assertThat(circuit.between(all.subList(2, 5))).isEqualTo("behind c");
        assertThat(circuit.between(all.subList(0, 2))).isEqualTo("before c");
        assertThat(circuit.between(all)).isEqualTo("anywhere in the circuit");
    }

    @Test
    void connectorsAreTakenForLikelierThanWiresAndWiresThanTheModule() {
        Circuit circuit = TestJobs.subject("fieldhand-4-wheel-rear-left").circuit();
        assertThat(Segment.Kind.CONNECTOR.usualOdds()).isGreaterThan(Segment.Kind.SPLICE.usualOdds());
        assertThat(Segment.Kind.SPLICE.usualOdds()).isGreaterThan(Segment.Kind.WIRE.usualOdds());
        assertThat(Segment.Kind.WIRE.usualOdds()).isGreaterThan(circuit.moduleOdds());
    }

    @Test
    void aFaultThatComesAndGoesIsMoreOftenMissed() {
        assertThat(TestJobs.subject("fieldhand-4-speedometer").circuit().wronglyGood())
                .isGreaterThan(TestJobs.subject("fieldhand-4-wheel-rear-left").circuit().wronglyGood());
    }
}
