package understudy.cli.signal;

import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import understudy.bench.Consent;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.pattern.Hazard;
import understudy.pattern.Pattern;
import understudy.view.CautionText;

/** Prints what can hurt people or machines. */
@Command(
        name = "cautions",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Shows what can hurt people or machines, and what to do about it.",
        footer = {"", "Examples:", "  understudy cautions", "  understudy cautions crank-36-1-vr"})
public final class CautionsCommand extends HouseCommand {

    @Parameters(
            paramLabel = "PATTERN",
            arity = "0..1",
            description = "A pattern, by name or file: only what applies to it. Without one: everything.")
    private String patternName;

    public CautionsCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Optional<Pattern> pattern = Optional.ofNullable(patternName).map(new Patterns()::find);
        surroundings.out().println(pattern.isPresent() ? "Cautions for " + pattern.get().title() : "Cautions");
        pattern.ifPresent(one -> CautionText.ownText(one).forEach(surroundings.out()::println));
        CautionText.text(pattern.map(Consent::hazards).orElse(List.of(Hazard.values()))).forEach(surroundings.out()::println);
        return ExitCode.FINE;
    }
}
