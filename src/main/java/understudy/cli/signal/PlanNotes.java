package understudy.cli.signal;

import java.util.ArrayList;
import java.util.List;
import understudy.bench.SignalPlan;
import understudy.cli.terminal.CommandWords;

/** What there is to know of a signal before it plays: what volts are worth, how the inputs take it, what the rate loses. */
public final class PlanNotes {

    private PlanNotes() {}

    public static List<String> lines(SignalPlan plan) {
        List<String> lines = new ArrayList<>(plan.voltsNote().lines().toList());
        plan.foresights().forEach(foresight -> lines.add(CommandWords.text(foresight.sentence())));
        lines.addAll(losses(plan));
        return lines;
    }

    /** What the sample rate loses of quick shapes. */
    static List<String> losses(SignalPlan plan) {
        return plan.swingLosses().stream().map(loss -> CommandWords.text(loss.warning())).toList();
    }
}
