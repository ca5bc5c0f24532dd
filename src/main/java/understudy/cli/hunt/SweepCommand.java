package understudy.cli.hunt;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.bench.Clearance;
import understudy.bench.Hookup;
import understudy.bench.Outlet;
import understudy.bench.SignalPlan;
import understudy.bench.SteadySignal;
import understudy.cli.signal.PlanNotes;
import understudy.cli.signal.SteadyOptions;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ConsentDialogue;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.plot.TerminalPlot;
import understudy.store.Store;
import understudy.sweep.ScaleOffer;
import understudy.sweep.SweepState;
import understudy.sweep.SweepStop;
import understudy.sweep.SweepTable;
import understudy.sweep.SweptCircuit;
import understudy.text.Paragraph;
import understudy.view.ReadingWords;
import understudy.view.SweepText;

/** Runs a module through many speeds, and logs what its display makes of them. */
@Command(
        name = "sweep",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Runs a module through many speeds, and logs what it displays.",
        footer = {
            "",
            "Examples:",
            "  understudy sweep fieldhand-4-speedometer --rig bench",
            "    --speeds \"500 to 4000 by 500 rpm\"",
            "  understudy sweep fieldhand-4-wheel-rear-left --speeds \"20, 60, 100 km/h\"",
            "    --return --to silent",
            "  understudy sweep crank-36-1-vr --speeds \"200, 800, 3000 rpm\" --csv crank.csv",
            "",
            "At each speed you are asked what the display shows. Every answer is in the file",
            "before the next speed; type ? for what else goes."
        })
public final class SweepCommand extends HouseCommand {

    private static final int DRAWN_ROWS = 4;

    @Parameters(paramLabel = "CIRCUIT", description = "What is injected: a circuit or a pattern, by name or file.")
    private String name;

    @Mixin
    private SweepSpeedOptions speeds;

    @Option(names = "--output", paramLabel = "NAME", description = "The pattern's output that goes there (default: its first).")
    private String outputName;

    @Option(
            names = "--reading",
            paramLabel = "READING",
            description = "What the display shows of it, like \"shows: engine speed, unit: rpm, teeth: 36\" (default: as the circuit says).")
    private String readingWords;

    @Option(names = "--vehicle", paramLabel = "TEXT", description = "Which vehicle it is (default: as the circuit says).")
    private String vehicle;

    @Option(names = "--learned", description = "Expects readings by the scale that was learned on this vehicle.")
    private boolean learned;

    @Mixin
    private SteadyOptions steady;

    @Mixin
    private SweepFiles files;

    @Option(names = "--yes", description = "Says yes to the cautions, for this time; for scripts.")
    private boolean yes;

    public SweepCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        SweptCircuit declared = SweptCircuit.find(name, outputName, readingWords, given);
        Optional<String> whose = Optional.ofNullable(vehicle).or(declared::vehicle);
        List<String> said = new ArrayList<>();
        SweptCircuit swept = expecting(declared, whose, said, given);
        List<SweepStop> steps = speeds.read(swept.pattern().speed(), given);
        steps.stream().filter(step -> swept.expected(step.speedHz()).isEmpty()).findFirst().ifPresent(step -> given.problem(
                "--speeds", "at " + swept.words(step.speedHz()) + " the reading does not say what is shown",
                "keep within the ends of its table"));
        files.read(given);
        Optional<Hookup> hookup = hookup(swept, given);
        int rateHz = steady.rateHz(given);
        Outlet outlet = steady.place(hookup, given);
        given.refuse();
        Optional<SweepTable> begun = files.resumed(swept, steps, given);
        given.refuse();
        SignalPlan asked = SignalPlan.steady(swept.pattern(), swept.output(),
                steps.stream().mapToDouble(SweepStop::speedHz).max().orElseThrow(), rateHz, hookup, steady.fit());
        SteadySignal signal = SteadySignal.of(asked, steady.askedRateHz(given), outlet);

        surroundings.out().println(outlet.note(signal.destination()));
        Clearance clearance = new ConsentDialogue(surroundings, yes).ask(signal.plan(), outlet.leaves());
        PlanNotes.lines(signal.plan()).forEach(surroundings.out()::println);
        SweepTable log = begun.orElseGet(() -> files.begin(swept, surroundings));
        try (TraceTalk talk = new TraceTalk(surroundings)) {
            talk.gap();
            talk.say("Taken: the display shows " + ReadingWords.of(swept.reading()) + ".");
            said.forEach(talk::say);
            boolean left = lead(new SweepDialogue(talk, log, SweepState.of(swept, steps, log.rows()), signal, clearance, surroundings.clock()), talk);
            close(log, swept, steps.size(), talk, !left, whose);
        }
        return ExitCode.FINE;
    }

    private SweptCircuit expecting(SweptCircuit declared, Optional<String> whose, List<String> said, Arguments given) {
        if (readingWords != null) {
            if (learned) {
                given.problem("--learned", "--reading says already what is shown", "leave one of them out");
            }
            return declared;
        }
        return surroundings.scale(whose, declared.id())
                .choose(learned, surroundings.clock().getZone(), words -> said.add(CommandWords.text(words)), given).map(reading -> declared.reading(reading, "the scale of this vehicle")).orElse(declared);
    }

    private Optional<Hookup> hookup(SweptCircuit swept, Arguments given) {
        if (steady.rig().isEmpty() && steady.input().isPresent()) {
            given.problem("--input", "it says nothing without a rig", "add --rig NAME, or leave it out");
        }
        return Hookup.maybe(steady.rig(), steady.input().or(swept::input), surroundings::rig, given);
    }

    /** Whether the user left, so that nothing more can be asked. */
    private static boolean lead(SweepDialogue session, TraceTalk talk) {
        try {
            session.run();
            return false;
        } catch (TraceTalk.Left left) {
            talk.gap();
            talk.say("Nothing plays any more.");
            return true;
        }
    }

    /** @param there whether somebody can still be asked */
    private void close(SweepTable log, SweptCircuit swept, int steps, TraceTalk talk, boolean there, Optional<String> whose) {
        talk.gap();
        if (log.rows().isEmpty()) {
            log.removeUnused();
            talk.say("Nothing was read.");
            return;
        }
        SweepText report = new SweepText(swept, log.rows());
        talk.lines(report.lines());
        if (!files.draws()) {
            report.plot().filter(SweepText::tellsMoreThanTheTable).ifPresent(plot -> {
                talk.gap();
                talk.lines(TerminalPlot.draw(plot, Paragraph.width(), DRAWN_ROWS, surroundings.braille()));
            });
        }
        talk.gap();
        talk.lines(List.of("The rows are in:", "  " + log.file()));
        if (log.rows().size() < steps) {
            talk.say("Not read: " + (steps - log.rows().size()) + " of " + steps + " speeds. To go on, give the same command once more, with:");
            talk.lines(List.of("  --resume --csv " + CommandWords.inQuotes(log.file().toString())));
        }
        report.learned().filter(found -> there).ifPresent(found ->
                offer(new ScaleOffer(found, report.allRight(), whose, swept.id()), "sweep of " + swept.id(), talk));
        files.write(report.json(whose, surroundings.clock().instant()), report.plot(), talk);
    }

    private void offer(ScaleOffer offer, String origin, TraceTalk talk) {
        offer.remark().ifPresent(talk::say);
        if (!offer.stands()) {
            return;
        }
        try {
            Optional<String> owner = talk.askOrLeave(offer.question());
            if (owner.isEmpty()) {
                talk.say("Not kept.");
                return;
            }
            try (Store store = surroundings.store()) {
                talk.say(CommandWords.text(offer.keep(store, owner.get(), surroundings.clock().instant(), origin)));
            }
        } catch (TraceTalk.Left left) {
            talk.say("The scale was not kept.");
        }
    }
}
