package understudy.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import understudy.pattern.Output;
import understudy.pattern.Signal;
import understudy.preflight.CannotJudge;
import understudy.preflight.Preflight;
import understudy.preflight.Setup;

/** What is known, before something is played through a rig, of how the input will take it: a line for each output. */
final class Foresight {

    private Foresight() {}

    /** Empty without a rig; outputs that play the same signal share a line, what can't be foreseen is said. */
    static List<String> lines(Playable playable) {
        List<String> lines = new ArrayList<>();
        playable.bench().ifPresent(bench -> {
            Set<Signal> judged = new HashSet<>();
            List<Output> outputs = Arrays.stream(playable.outputOfChannel()).filter(output -> output != Channels.SILENT)
                    .mapToObj(playable.pattern().outputs()::get).toList();
            for (Output output : outputs) {
                if (judged.add(output.signal())) {
                    line(playable, bench, output).forEach(lines::add);
                }
            }
        });
        return lines;
    }

    private static List<String> line(Playable playable, Bench bench, Output output) {
        double level = bench.fullScaleVolts() / playable.scale().fullScaleVolts();
        Setup setup = Setup.of(playable.pattern(), output, bench.circuit(), bench.input().input(), playable.rateHz())
                .withLevel(level);
        try {
            return List.of(output.name() + " " + Preflight.rangeOnly(setup, playable.startHz()).summary());
        } catch (CannotJudge e) {
            return List.of(e.getMessage());
        }
    }
}
