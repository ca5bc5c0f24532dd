package understudy.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.JsonSchema;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import understudy.refusal.Refusal;
import understudy.refusal.Result;
import understudy.text.TextFile;
import understudy.refusal.Location;

/** Garbled files: the reader never throws, every problem has a real place, and it accepts nothing the schema refuses. */
class ReaderFuzzTest {
    private static final List<String> SOUND = texts(Stream.of(Corpus.good(), Corpus.files(Corpus.SHIPPED)));
    private static final List<String> BROKEN = texts(Stream.of(Corpus.bad()));
    private static final JsonSchema SCHEMA = schema();
    /** Pieces that are likely to break something, YAML's own signs and the edges of numbers among them. */
    private static final List<String> PIECES = List.of(
            "", " ", "\t", "\n", ":", ": ", "-", "- ", "#", "[", "]", "{", "}", ",", "'", "\"", "&a ", "*a", "!", "!!int ", "|\n",
            "0", "-1", "9999999999999999999", "1e9", ".inf", ".nan", "0x7f", "0.5", "1/0", "null", "true", "on", "~", "<<", "µ",
            "\u0000", "\ufeff", "\ud83d\ude00", "deg", " V", " rpm", "%", "forever", "follow", "---\n", "...", "0 deg", "360 deg");

    private static List<String> texts(Stream<List<Path>> files) {
        return files.flatMap(List::stream).map(ReaderFuzzTest::text).toList();
    }

    private static String text(Path file) {
        try {
            return new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static JsonSchema schema() {
        try {
            return Corpus.schema();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Property(tries = 6000)
    @StatisticsReport(label = "read", value = StatisticsReport.StatisticsReportMode.OFF)
    void garbledFilesAreReadOrRefusedAtARealPlace(@ForAll long seed, @ForAll @IntRange(min = 1, max = 3) int changes) {
        Random random = new Random(seed);
        List<String> texts = random.nextInt(8) > 0 ? SOUND : BROKEN;
        String text = texts.get(random.nextInt(texts.size()));
        for (int i = 0; i < changes; i++) {
            text = random.nextBoolean() ? changedLine(text, random) : changedLetters(text, random);
        }
        Result<Pattern> result = PatternReader.read("garbled.yaml", text);
        assertPlaces(text, result.problems());
        // Some must still be read, or the schema's word would be asked about nothing.
        Statistics.label("read").collect(result.value().isPresent())
                .coverage(share -> share.check(true).percentage(percent -> percent > 2));
        if (result.value().isPresent()) {
            assertThat(Corpus.judge(SCHEMA, text)).as(text).isEmpty();
        }
    }

    @Property(tries = 500)
    void garbledCommandLinesAreReadOrRefused(@ForAll long seed, @ForAll @IntRange(min = 0, max = 4) int changes) {
        Random random = new Random(seed);
        Pattern pattern = PatternReader.read("faults.yaml", text(Corpus.FOLDER.resolve("good/faults.yaml"))).value().orElseThrow();
        String fault = "fault: weak tooth, tooth: [5, 6], strength: 40 %, when: \"from 2 s, every 3 turns\"";
        String profile = "ramp: 6000 rpm, from: 500 rpm, for: 5 s; repeat: 2, steps: [{hold: 10 Hz, for: 2 s}]; follow";
        for (int i = 0; i < changes; i++) {
            fault = changedLetters(fault, random);
            profile = changedLetters(profile, random);
        }
        assertPlaces(oneLine(fault), PatternReader.readFault(fault, pattern).problems());
        assertPlaces(oneLine(profile), PatternReader.readProfile(profile, pattern.speed()).problems());
    }

    private static String oneLine(String text) {
        return String.join(" ", text.split("[\n\r\u0085\u2028\u2029]", -1));
    }

    private static void assertPlaces(String text, List<Refusal> problems) {
        // the only line breaks of YAML 1.2 (5.4); a next-line or a line separator is a character of its line
        String[] lines = text.split("\r\n|[\r\n]", -1);
        for (Refusal problem : problems) {
            Location.Line at = (Location.Line) problem.location();
            assertThat(at.line()).as("%s in%n%s", problem, text).isBetween(1, lines.length);
            String line = lines[at.line() - 1];
            assertThat(at.column()).as("%s in%n%s", problem, text)
                    .isBetween(1, line.codePointCount(0, line.length()) + 1);
            assertThat(problem.wrong()).isNotBlank();
            assertThat(problem.right()).isNotBlank();
        }
    }

    private static String changedLine(String text, Random random) {
        List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
        int at = random.nextInt(lines.size());
        switch (random.nextInt(4)) {
            case 0 -> lines.remove(at);
            case 1 -> lines.add(at, lines.get(at));
            case 2 -> lines.set(at, " " + lines.get(at));
            default -> lines.set(at, lines.get(random.nextInt(lines.size())));
        }
        return String.join("\n", lines);
    }

    private static String changedLetters(String text, Random random) {
        int from = random.nextInt(text.length() + 1);
        int to = Math.min(text.length(), from + (int) Math.abs(random.nextGaussian() * 3));
        int source = random.nextInt(text.length() + 1);
        String other = random.nextBoolean() ? PIECES.get(random.nextInt(PIECES.size()))
                : text.substring(source, Math.min(text.length(), source + random.nextInt(12)));
        return text.substring(0, from) + other + text.substring(to);
    }

    @Test
    void deepAndWideAliasesEndQuickly() {
        StringBuilder bomb = new StringBuilder("profile:\n  - &s0 {hold: 800 rpm, for: 1 s}\n");
        for (int i = 1; i < 30; i++) {
            bomb.append("  - &s").append(i).append(" {repeat: 2, steps: [").append(("*s" + (i - 1) + ", ").repeat(20))
                    .append("]}\n");
        }
        Result<Pattern> result = PatternReader.read("bomb.yaml", text(Corpus.FOLDER.resolve("good/least.yaml")) + bomb);
        assertThat(result.problems()).extracting(Refusal::wrong).contains("the profile has too many steps");
    }

    @Test
    void aFileTooBigIsRefusedUnread() {
        assertThat(PatternReader.read("big.yaml", "#".repeat(TextFile.MOST_CHARACTERS + 1)).problems())
                .extracting(Refusal::toString)
                .containsExactly("big.yaml:1:1: the file is too big; it may have at most 262144 characters");
        assertThat(PatternReader.read("big.yaml", new byte[5 * TextFile.MOST_CHARACTERS]).problems()).hasSize(1);
    }

    /** 50 000 unknown keys: work that grows with their square would take minutes, in proportion it takes about a second. */
    @Test
    @Timeout(30)
    void aFileFullOfMistakesIsReadInProportionToItsSize() {
        String text = "k: 1\n".repeat(50_000);
        assertThat(PatternReader.read("many.yaml", text).problems()).hasSizeGreaterThan(50_000);
    }

    @Test
    @Timeout(30)
    void aVeryLongKeyIsNoWork() {
        String text = "k".repeat(200_000) + ": 1\n";
        assertThat(PatternReader.read("long.yaml", text).problems()).isNotEmpty();
    }
}
