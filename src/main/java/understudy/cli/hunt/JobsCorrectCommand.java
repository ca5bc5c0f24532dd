package understudy.cli.hunt;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.refusal.Refused;
import understudy.store.Store;
import understudy.trace.Detail;
import understudy.trace.Entry;
import understudy.trace.Hunt;

/** Sets right what was written down of a job. */
@Command(
        name = "correct",
        sortOptions = false,
        description = "Sets right what was written down of a job; what stood there before stays in its list of steps.",
        footer = {"", "Example:", "  understudy jobs correct speedometer-may --who \"the evening class\""})
final class JobsCorrectCommand extends HouseCommand {

    @Parameters(paramLabel = "NAME", description = "The job.")
    private String name;

    @Option(names = "--vehicle", paramLabel = "TEXT", description = "Which vehicle it is.")
    private String vehicle;

    @Option(names = "--complaint", paramLabel = "TEXT", description = "What the complaint is.")
    private String complaint;

    @Option(names = "--who", paramLabel = "TEXT", description = "Who does the work.")
    private String who;

    @Option(names = "--remark", paramLabel = "TEXT", description = "The words with which it was closed.")
    private String remark;

    JobsCorrectCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Map<Detail, String> right = new EnumMap<>(Detail.class);
        right.put(Detail.VEHICLE, vehicle);
        right.put(Detail.COMPLAINT, complaint);
        right.put(Detail.WHO, who);
        right.put(Detail.REMARK, remark);
        right.values().removeIf(Objects::isNull);
        if (right.isEmpty()) {
            throw new Refused("nothing to correct is given", "give --vehicle, --complaint, --who or --remark");
        }
        try (Store store = surroundings.store()) {
            Hunt before = Hunt.of(store.jobs().find(name));
            Hunt after = before;
            for (Map.Entry<Detail, String> one : right.entrySet()) {
                after = after.after(surroundings.clock().instant(),
                        new Entry.Corrected(one.getKey(), before.written(one.getKey()), one.getValue()));
            }
            store.jobs().keep(before, after);
            right.keySet().forEach(detail -> surroundings.out().println(detail.key() + ": \"" + right.get(detail) + "\", was \""
                    + before.written(detail) + "\""));
        }
        return ExitCode.FINE;
    }
}
