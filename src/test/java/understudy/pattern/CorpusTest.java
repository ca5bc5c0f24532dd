package understudy.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.JsonSchema;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Reader and schema give the same verdict on every file of the corpus; where they can't, it is written down here. */
class CorpusTest {

    /** What a schema can't say: the files that break only such a rule, by the kind of rule. */
    private static final Map<String, List<String>> SEMANTIC = Map.of(
            "how large the number in a quantity is", List.of(
                    "fault-dropout-too-long", "hall-kilovolts", "phase-out-of-range", "profile-ripple-too-deep",
                    "reluctor-pole-wide", "speed-absurd", "speed-too-fast", "wheel-edge-beyond", "wheel-teeth-at-360"),
            "how quantities compare", List.of(
                    "bursts-order", "cycle-order", "cycle-third-point", "fault-flicker-always-open",
                    "fault-when-backwards", "hall-upside-down", "profile-out-of-range", "reluctor-ceiling-low",
                    "speed-default-out-of-range", "speed-upside-down", "wheel-edges-order", "wheel-teeth-at-order"),
            "how teeth lie", List.of(
                    "fault-displaced-into-neighbour", "wheel-teeth-at-wrap-overlap", "wheel-teeth-overlap",
                    "wheel-teeth-overlap-reluctor"),
            "how numbers and lists compare", List.of(
                    "fault-no-tooth-left", "fault-tooth-off-wheel", "wheel-all-missing", "wheel-edges-odd",
                    "wheel-missing-off-wheel", "wheel-widths-count"),
            "what kind of thing a name or a speed refers to", List.of(
                    "fault-output-unknown", "fault-run-out-amplitude-on-hall", "fault-run-out-on-tone",
                    "fault-shift-fixed-tone", "fault-shift-teeth-on-cycle", "fault-tooth-on-tone", "fault-weak-on-hall",
                    "profile-road-speed-without-rolls", "reluctor-at-road-speed"),
            "what comes twice", List.of(
                    "fault-name-twice", "fault-when-twice", "key-twice", "output-name-twice"),
            "what comes before or within what", List.of(
                    "profile-follow-not-last", "profile-forever-not-last", "profile-repeat-too-deep",
                    "profile-sweep-after-standstill", "profile-sweep-after-standstill-repeated"));

    static List<Path> good() {
        return Corpus.good();
    }

    static List<Path> bad() {
        return Corpus.bad();
    }

    @Test
    void theCorpusIsAsBigAsItShouldBe() {
        assertThat(Corpus.good()).hasSizeGreaterThanOrEqualTo(25);
        assertThat(Corpus.bad()).hasSizeGreaterThanOrEqualTo(60);
    }

    @ParameterizedTest
    @MethodSource("good")
    void readerAndSchemaAcceptEveryGoodFile(Path file) throws IOException {
        assertThat(Corpus.read(file).problems()).isEmpty();
        assertThat(Corpus.judge(Corpus.schema(), file)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("bad")
    void readerRefusesEveryBadFileInTheseWords(Path file) throws IOException {
        String said = Corpus.read(file).problems().stream().map(p -> p + "\n").collect(Collectors.joining());
        String expected = Files.readString(file.resolveSibling(Corpus.name(file) + ".expected"));
        assertThat(said).isEqualTo(expected).isNotEmpty();
    }

    /** Files named yaml-... hold no value that a schema could judge: they break YAML itself, or contain themselves. */
    @Test
    void schemaRefusesTheBadFilesButForThoseListedAsSemantic() throws IOException {
        JsonSchema schema = Corpus.schema();
        Set<String> accepted = new TreeSet<>();
        for (Path file : Corpus.bad()) {
            if (!Corpus.name(file).startsWith("yaml-") && Corpus.judge(schema, file).isEmpty()) {
                accepted.add(Corpus.name(file));
            }
        }
        Set<String> listed = new TreeSet<>();
        SEMANTIC.values().forEach(listed::addAll);
        assertThat(accepted).isEqualTo(listed);
    }
}
