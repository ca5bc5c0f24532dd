package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import understudy.cli.signal.Patterns;
import understudy.pattern.Output;
import understudy.pattern.Pattern;

/** What preflight judges is what plays: the same words give the same level, the same sentence and the same refusals. */
class SamePlanTest {

    private static final int CASES = 16;
    private static final String[] INPUTS = {
        "reluctor-adaptive", "reluctor-hysteresis", "reluctor-biased-pair", "reluctor-adaptive-pair", "resistive",
        "resistive, needs: 60 mV", "resistive, resistance: 22k", "pulled-up-5-v"
    };

    @TempDir
    private static Path home;

    private static int bothPlay;

    static IntStream seeds() {
        return IntStream.range(0, CASES);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void preflightJudgesWhatPlays(int seed) throws IOException {
        Random random = new Random(seed);
        List<Pattern> patterns = new Patterns().shipped();
        Pattern pattern = patterns.get(random.nextInt(patterns.size()));
        List<String> names = pattern.outputs().stream().map(Output::name).toList();
        String judged = names.get(random.nextInt(names.size()));
        List<String> words = new ArrayList<>();
        for (String output : names) {
            String rig = "rig-" + seed + "-" + output;
            List<String> made = new ArrayList<>(List.of("rig", "make", rig,
                    "--full-scale", String.format(Locale.ROOT, "%.2f V %d%%", 0.5 + 2.5 * random.nextDouble(), random.nextInt(20)),
                    "--series", 2 + random.nextInt(30) + "k 1%",
                    "--shunt", random.nextInt(3) == 0 ? "none" : 1 + random.nextInt(30) + "k 1%"));
            if (random.nextInt(3) == 0) {
                made.addAll(List.of("--output-capacitor", "none"));
            }
            assertThat(Run.in(home).understudy(made.toArray(new String[0])).err()).isEmpty();
            words.addAll(List.of("--rig", output + "=" + rig, "--input", output + "=" + INPUTS[random.nextInt(INPUTS.length)]));
        }
        if (random.nextInt(3) > 0) {
            words.add("--fit");
        }

        Run.Outcome preflight = run(words, "preflight", pattern.id(), "--output", judged, "--json");
        Run.Outcome play = run(words, "play", pattern.id(), "--to", "silent", "--for", "100 ms");
        Run.Outcome render = run(words, "render", pattern.id(), "--out", home.resolve("x.wav").toString(), "--for", "10 ms", "--json");
        assertThat(render.exitCode()).isEqualTo(play.exitCode());
        if (preflight.exitCode() != 0) {
            // what it has no answer for is said by play in the signal's place; what doesn't fit is refused by both alike
            assertThat(play.exitCode() == 0 ? play.out() : play.err()).contains(preflight.err().strip().replaceFirst("^\\S+: ", ""));
            return;
        }
        Map<String, Object> judgedPlan = JSON.std.mapFrom(preflight.out());
        List<?> breaches = (List<?>) judgedPlan.get("breaches");
        if (play.exitCode() != 0) {
            assertThat(play.err().lines().filter(line -> line.startsWith("rig ")).toList()).isEqualTo(breaches);
            return;
        }
        bothPlay++;
        assertThat(breaches).isEmpty();
        // what the parts at nominal value would do is a second search, which play leaves out
        String summary = judgedPlan.get("summary").toString().replaceFirst(" \\(from [^)]* at nominal values\\)", "");
        assertThat(play.out().lines()).contains(judged + " " + summary);
        List<?> outputs = (List<?>) JSON.std.mapFrom(render.out()).get("outputs");
        Map<?, ?> played = (Map<?, ?>) outputs.stream().filter(one -> judged.equals(((Map<?, ?>) one).get("output"))).findFirst()
                .orElseThrow();
        // printed with twelve digits
        assertThat(number(judgedPlan, "level"))
                .isCloseTo(number(judgedPlan, "mostPinVolts") / number(played, "fullScaleVolts"), withinPercentage(1e-8));
    }

    /** Where all are refused nothing is compared. */
    @AfterAll
    static void enoughOfThemPlay() {
        assertThat(bothPlay).isGreaterThanOrEqualTo(CASES / 5);
    }

    private static Run.Outcome run(List<String> words, String... first) {
        List<String> all = new ArrayList<>(List.of(first));
        all.addAll(words);
        return Run.in(home).understudy(all.toArray(new String[0]));
    }

    private static double number(Map<?, ?> map, String key) {
        return ((Number) map.get(key)).doubleValue();
    }
}
