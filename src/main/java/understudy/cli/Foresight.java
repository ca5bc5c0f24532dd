package understudy.cli;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import understudy.pattern.Output;
import understudy.refusal.Refused;
import understudy.preflight.Preflight;
import understudy.preflight.Setup;

/** What is known, before something is played through a rig, of how the input will take it: a line for each output. */
final class Foresight {

    private Foresight() {}

    /** Empty without a rig; outputs that play the same signal into the same share a line. What can't be foreseen is said. */
    static List<String> lines(Playable playable) {
        Set<List<Object>> judged = new HashSet<>();
        return playable.played().stream()
                .flatMap(output -> playable.benches().of(output).filter(bench -> judged.add(List.of(output.signal(), bench)))
                        .map(bench -> line(playable, bench, output)).stream()).toList();
    }

    private static String line(Playable playable, Bench bench, Output output) {
        Setup setup = Setup.of(playable.pattern(), output, bench.circuit(), bench.input().input(), playable.rateHz())
                .withLevel(playable.level());
        try {
            return output.name() + " " + Preflight.rangeOnly(setup, playable.startHz()).summary();
        } catch (Refused e) {
            return CommandWords.text(e.refusals().get(0));
        }
    }
}
