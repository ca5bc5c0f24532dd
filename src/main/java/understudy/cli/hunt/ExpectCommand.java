package understudy.cli.hunt;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.cli.signal.Patterns;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.pattern.NamedOutput;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.reading.EvenPoints;
import understudy.reading.Injected;
import understudy.reading.LearnedPairs;
import understudy.reading.OwnReading;
import understudy.reading.Reading;
import understudy.reading.ReadingReader;
import understudy.reading.SignalFrequency;
import understudy.reading.TyreSize;
import understudy.refusal.Control;
import understudy.refusal.Location;
import understudy.text.Json;
import understudy.text.Paragraph;
import understudy.trace.Circuit;
import understudy.trace.CircuitFiles;
import understudy.trace.Subjects;
import understudy.view.ExpectedText;
import understudy.view.LearnedText;

/** Computes what the module should display, and learns from what it does display. */
@Command(
        name = "expect",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Computes what the module should display, and learns its scale.",
        footer = {
            "",
            "Examples:",
            "  understudy expect wheel-speed-44-vr --speed \"50 km/h\"",
            "  understudy expect fieldhand-4-speedometer",
            "  understudy expect wheel-speed-44-vr --from \"10 km/h\" --to \"120 km/h\"",
            "  understudy expect sine --reading \"shows: engine speed, unit: rpm, teeth: 36\"",
            "  understudy expect --learn \"100 Hz: 16 km/h, 200 Hz: 32, 400 Hz: 63\"",
            "",
            "'understudy guide reading' has every kind of reading, word by word."
        })
public final class ExpectCommand extends HouseCommand {

    private static final Range FREQUENCY = new Range(0, 200_000, Unit.HERTZ);
    private static final Range ROLLS = new Range(0.1, 20, Unit.METRE);

    @Parameters(paramLabel = "PATTERN", arity = "0..1", description = "What is injected: a pattern or a circuit, by name or file.")
    private String patternName;

    @Option(names = "--output", paramLabel = "NAME", description = "The pattern's output that goes there (default: its first).")
    private String outputName;

    @Option(
            names = "--reading",
            paramLabel = "READING",
            description = "What the display shows of it, like \"shows: engine speed, unit: rpm, teeth: 36\" (default: the pattern's own speed).")
    private String readingWords;

    @Option(names = "--speed", paramLabel = "SPEED", description = "The pattern's speed (default: the pattern's).")
    private String speed;

    @Option(names = "--frequency", paramLabel = "HZ", description = "Events a second instead of a pattern, like \"692 Hz\".")
    private String frequency;

    @Option(names = "--shown", paramLabel = "VALUE", description = "Asks the other way: what must be injected to show this?")
    private String shown;

    @Option(names = "--from", paramLabel = "SPEED", description = "A table for the wall, from this speed, or frequency,")
    private String from;

    @Option(names = "--to", paramLabel = "SPEED", description = "to this one,")
    private String to;

    @Option(names = "--step", paramLabel = "SPEED", description = "so far apart (default: a tenth of the way).")
    private String step;

    @Option(
            names = "--learn",
            paramLabel = "PAIRS",
            description = "Learns the display's scale: pairs of what was injected and displayed, in the order taken, or a file of them.")
    private String pairs;

    @Option(names = "--vehicle", paramLabel = "TEXT", description = "Which vehicle it is (default: as the circuit says).")
    private String vehicle;

    @Option(names = "--learned", description = "Expects readings by the scale that was learned on this vehicle.")
    private boolean learned;

    @Option(names = "--tyre", paramLabel = "SIZE", description = "With --learn: size, or what one turn rolls; shows the teeth that fit.")
    private String tyre;

    @Option(names = "--csv", description = "Prints the table as CSV.")
    private boolean csv;

    @Option(names = "--json", description = "Prints the answer as JSON, for scripts.")
    private boolean json;

    /** What a circuit says is injected. */
    private Optional<Double> usualHz = Optional.empty();

    public ExpectCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        oneQuestion(given);
        Optional<Subjects.Subject> circuit = Optional.ofNullable(patternName).filter(CircuitFiles::is)
                .map(CircuitFiles::find).map(CircuitFiles::read);
        Optional<Pattern> pattern = circuit.map(Subjects.Subject::pattern)
                .or(() -> Optional.ofNullable(patternName).map(new Patterns()::find));
        Optional<Output> output = circuit.filter(subject -> outputName == null).map(Subjects.Subject::output)
                .or(() -> pattern.flatMap(one -> NamedOutput.find(one, outputName, given)));
        List<String> said = new ArrayList<>();
        Optional<Reading> declared = Optional.ofNullable(readingWords)
                .flatMap(words -> given.value(ReadingReader.read(words, Location.of(Control.READING))))
                .or(() -> kept(circuit.map(Subjects.Subject::circuit), pattern, said, given))
                .or(() -> circuit.map(subject -> subject.circuit().reading()));
        usualHz = circuit.map(Subjects.Subject::speedHz);
        output.filter(one -> SignalFrequency.hz(one, 1).isEmpty()).ifPresent(one -> given.problem(patternName,
                "its output " + one.name() + " has no events that a module counts", "name another one with --output"));
        given.refuse();
        Optional<Reading> reading = declared.or(() -> output.flatMap(one -> OwnReading.of(pattern.orElseThrow(), one)));
        Injected injected = new Injected(pattern, output);
        List<String> lines = pairs != null
                ? learn(injected, declared, reading, given)
                : expect(injected, reading, given);
        lines.forEach(surroundings.out()::println);
        if (!csv && !json) {
            said.stream().flatMap(line -> Paragraph.lines(line).stream()).forEach(surroundings.out()::println);
        }
        return ExitCode.FINE;
    }

    private Optional<Reading> kept(Optional<Circuit> circuit, Optional<Pattern> pattern, List<String> said, Arguments given) {
        Optional<String> id = circuit.map(Circuit::id).or(() -> pattern.map(Pattern::id));
        return id.flatMap(known -> surroundings.scale(Optional.ofNullable(vehicle).or(() -> circuit.flatMap(Circuit::vehicle)), known)
                .choose(learned, surroundings.clock().getZone(), words -> said.add(CommandWords.text(words)), given));
    }

    private void oneQuestion(Arguments given) {
        List<String> questions = new ArrayList<>();
        for (String[] option : new String[][] {{"--learn", pairs}, {"--shown", shown}, {"--from and --to", from == null ? to : from},
            {"--frequency", frequency}, {"--speed", speed}}) {
            if (option[1] != null) {
                questions.add(option[0]);
            }
        }
        if (questions.size() > 1) {
            given.problem("expect", String.join(" and ", questions) + " are different questions", "ask one at a time");
        }
        if (patternName != null && frequency != null) {
            given.problem("--frequency", "the pattern gives the frequency", "leave either away");
        }
        if (patternName == null && (speed != null || outputName != null)) {
            given.problem(speed != null ? "--speed" : "--output", "there is no pattern that has it",
                    "name a pattern, or give --frequency alone");
        }
        if (patternName == null && readingWords == null && pairs == null) {
            given.problem("expect", "it is not known what the display shows", "name a pattern, or give --reading");
        }
        if (learned && (patternName == null || readingWords != null || pairs != null)) {
            given.problem("--learned", patternName == null ? "it is not known of which circuit" : "it does not go with "
                    + (pairs == null ? "--reading" : "--learn"), patternName == null ? "name a circuit or a pattern" : "leave it out");
        }
        if (csv && json) {
            given.problem("--csv", "--json was asked for as well", "ask for one of them");
        }
        if (tyre != null && pairs == null) {
            given.problem("--tyre", "it goes with --learn only", "write the tyre into --reading, like \"tyre: 205/55R16\"");
        }
        if (step != null && from == null && to == null) {
            given.problem("--step", "there is no table to step through", "add --from and --to");
        }
    }

    private List<String> learn(Injected injected, Optional<Reading> declared, Optional<Reading> reading, Arguments given) {
        OptionalDouble rollsMetres = tyre == null ? OptionalDouble.empty() : given.attempt("--tyre", this::rolls)
                .map(OptionalDouble::of).orElse(OptionalDouble.empty());
        LearnedPairs.Read read = new LearnedPairs(injected, reading.map(Reading::unit), given).read(pairs);
        given.refuse();
        LearnedText report = LearnedText.of(read, declared, readingWords == null ? "the circuit's file" : "the reading given",
                rollsMetres, given);
        given.refuse();
        return json ? List.of(Json.text(report.json())) : report.lines();
    }

    private double rolls() {
        return tyre.contains("/") ? TyreSize.parse(tyre).rollsMetres() : ROLLS.typed(tyre);
    }

    private List<String> expect(Injected injected, Optional<Reading> known, Arguments given) {
        if (known.isEmpty()) {
            given.problem(patternName, "this output stands still, whatever the speed", "say what is shown with --reading");
            given.refuse();
        }
        Reading reading = known.orElseThrow();
        List<Injected.Point> points = points(injected, reading, given);
        given.refuse();
        ExpectedText report = new ExpectedText(reading, readingWords == null && usualHz.isEmpty(), injected, points, shown != null, CommandWords.wording());
        report.refuseWhatIsBeyond(given);
        given.refuse();
        return json ? List.of(Json.text(report.json())) : csv ? report.csv() : points.size() > 1 ? report.table() : report.answer();
    }

    private List<Injected.Point> points(Injected injected, Reading reading, Arguments given) {
        if (shown != null) {
            return injected.showing(shown, reading, given).map(List::of).orElse(List.of());
        }
        if (from != null || to != null) {
            return EvenPoints.of(injected, from, to, step, given);
        }
        if (injected.pattern().isPresent()) {
            return List.of(injected.atSpeed(speed == null && usualHz.isPresent()
                    ? usualHz.get() : given.speedHz(speed, injected.pattern().get())));
        }
        if (frequency == null) {
            given.problem("expect", "it is not known what is injected",
                    "name a pattern, or give --frequency, --shown, or --from and --to");
        }
        return List.of(injected.atHz(given.quantity("--frequency", frequency, FREQUENCY, 0)));
    }
}
