package understudy.cli.hunt;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.bench.Agreement;
import understudy.bench.Outlet;
import understudy.cli.signal.SteadyOptions;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.hunt.HuntBeginning;
import understudy.hunt.HuntCircuits;
import understudy.hunt.HuntKit;
import understudy.hunt.HuntSession;
import understudy.reading.Reading;
import understudy.refusal.Refused;
import understudy.store.Store;
import understudy.trace.Circuit;
import understudy.trace.CircuitFiles;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.NextStep;
import understudy.trace.Subjects;
import understudy.view.HuntText;
import understudy.view.PlanText;

/** Leads a fault hunt. */
@Command(
        name = "trace",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Leads a fault hunt: where to inject, what it says, where next.",
        footer = {
            "",
            "Examples:",
            "  understudy trace --plan fieldhand-4-speedometer",
            "  understudy trace fieldhand-4-speedometer --rig bench",
            "  understudy trace fieldhand-4-speedometer --to silent --job first-try",
            "  understudy trace --resume first-try --to silent",
            "",
            "You are asked everything, line by line. Every answer is kept at once: stop at",
            "any prompt, and resume there. Type ? at a prompt for what else goes."
        })
public final class TraceCommand extends HouseCommand {

    @Parameters(paramLabel = "CIRCUIT", arity = "0..1", description = "The suspect circuit, by name or file.")
    private String circuitName;

    @Option(names = "--resume", paramLabel = "JOB", description = "Goes on with a job where it stood.")
    private String resumed;

    @Option(names = "--plan", description = "Only prints the plan of the circuit, and what it takes.")
    private boolean plan;

    @Option(names = "--job", paramLabel = "NAME", description = "What the new job is called.")
    private String jobName;

    @Option(names = "--vehicle", paramLabel = "TEXT", description = "Which vehicle it is.")
    private String vehicle;

    @Option(names = "--complaint", paramLabel = "TEXT", description = "What the complaint is.")
    private String complaint;

    @Option(names = "--who", paramLabel = "TEXT", description = "Who does the work.")
    private String who;

    @Option(names = "--learned", description = "Expects readings by the scale that was learned on this vehicle.")
    private boolean learned;

    @Mixin
    private SteadyOptions equipment;

    public TraceCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        if (resumed == null && circuitName == null) {
            throw new Refused("trace: CIRCUIT is missing", "give a circuit, or --resume JOB to go on with a job");
        } else if (resumed != null && (circuitName != null || jobName != null || vehicle != null || complaint != null || who != null || learned)) {
            throw new Refused("--resume: the job has its circuit, reading, name, vehicle, complaint and who already", "leave them out");
        }
        if (plan && resumed != null) {
            throw new Refused("--plan: it is of a circuit, before anything is measured", "give CIRCUIT instead of --resume");
        } else if (plan) {
            PlanText.lines(CircuitFiles.read(CircuitFiles.find(circuitName)).circuit()).forEach(surroundings.out()::println);
            return ExitCode.FINE;
        }
        return resumed == null ? begin() : resume();
    }

    private int begin() {
        List<String> said = new ArrayList<>();
        HuntCircuits start = start(said);
        HuntKit chosen = kit(equipment.rig(), equipment.input().or(start.suspect().circuit()::input), start.suspect(), start.reference());
        try (Store store = surroundings.store(); TraceTalk talk = new TraceTalk(surroundings)) {
            chosen.words().forEach(talk::say);
            said.forEach(talk::say);
            Hunt hunt;
            try {
                hunt = begin(start, chosen, talk, store);
            } catch (TraceTalk.Left left) {
                talk.say("No job was begun.");
                return ExitCode.FINE;
            }
            if (learned) {
                hunt = store.jobs().add(hunt, surroundings.clock().instant(), new Entry.Noted(String.join(" ", said)));
            }
            talk.gap();
            talk.say("Job \"" + hunt.job().name() + "\" is begun. The circuit, with the odds of each piece before anything is"
                    + " measured:");
            talk.gap();
            talk.lines(new HuntText(hunt).circuit());
            return lead(session(hunt, chosen, false, talk, store), talk);
        }
    }

    /** Asks what is not known yet, and keeps the job. */
    private Hunt begin(HuntCircuits circuits, HuntKit chosen, TraceTalk talk, Store store) {
        Circuit circuit = circuits.suspect().circuit();
        talk.gap();
        talk.say(circuit.title());
        talk.gap();
        talk.say("What is not known yet; Enter skips it. Type stop at any question to leave.");
        String free = store.jobs().free(circuit.id() + "-" + LocalDate.now(surroundings.clock()));
        HuntBeginning beginning = new HuntBeginning(circuit, free, known());
        while (beginning.next().isPresent()) {
            beginning = beginning.after(talk.askOrLeave(beginning.question()));
        }
        return store.jobs().begin(circuits.job(beginning.known(), chosen, surroundings.clock().instant()));
    }

    /** What the command line says of the job. */
    private Map<HuntBeginning.Item, String> known() {
        Map<HuntBeginning.Item, String> known = new EnumMap<>(HuntBeginning.Item.class);
        known.put(HuntBeginning.Item.VEHICLE, vehicle);
        known.put(HuntBeginning.Item.COMPLAINT, complaint);
        known.put(HuntBeginning.Item.WHO, who);
        known.put(HuntBeginning.Item.NAME, jobName);
        known.values().removeIf(Objects::isNull);
        return known;
    }

    /** With the scale that was learned on the vehicle, where that is asked for. */
    private HuntCircuits start(List<String> said) {
        HuntCircuits asWritten = new HuntCircuits(circuitName);
        Circuit circuit = asWritten.suspect().circuit();
        Arguments given = new Arguments();
        Optional<Reading> known = surroundings.scale(Optional.ofNullable(vehicle).or(circuit::vehicle), circuit.id())
                .choose(learned, surroundings.clock().getZone(), words -> said.add(CommandWords.text(words)), given);
        given.refuse();
        return known.map(asWritten::expecting).orElse(asWritten);
    }

    private int resume() {
        try (Store store = surroundings.store(); TraceTalk talk = new TraceTalk(surroundings)) {
            Hunt hunt = Hunt.of(store.jobs().find(resumed));
            if (hunt.next() instanceof NextStep.Ended) {
                throw new Refused("--resume: job \"" + hunt.job().name() + "\" is closed", CommandWords.command("report "
                        + CommandWords.named(hunt.job().name())) + " writes its report");
            }
            HuntKit chosen = kit(hunt.job().equipment().rig(), hunt.job().equipment().input(),
                    hunt.subjects().suspect(), hunt.subjects().reference());
            chosen.words().forEach(talk::say);
            talk.lines(new HuntText(hunt).where());
            if (!hunt.job().equipment().words().contains(chosen.words().get(0))) {
                hunt = store.jobs().add(hunt, surroundings.clock().instant(), new Entry.Noted("from here on: " + chosen.words().get(0)));
            }
            return lead(session(hunt, chosen, true, talk, store), talk);
        }
    }

    private HuntKit kit(Optional<String> rig, Optional<String> input, Subjects.Subject suspect, Optional<Subjects.Subject> reference) {
        if (resumed != null && (equipment.rig().isPresent() || equipment.input().isPresent())) {
            throw new Refused("--resume: rig and input stay those that the job was begun with", "leave --rig and --input out");
        }
        Arguments given = new Arguments();
        HuntKit.Request asked = new HuntKit.Request(rig, input, equipment.fit(), equipment.rateHz(given), equipment.askedRateHz(given));
        given.refuse();
        try (Store store = surroundings.store()) {
            return HuntKit.of(asked, suspect, reference, store, (hookup, problems) -> {
                Outlet outlet = equipment.place(hookup, given);
                given.list().forEach(problems::add);
                return outlet;
            });
        }
    }

    private HuntDialogue session(Hunt hunt, HuntKit chosen, boolean again, TraceTalk talk, Store store) {
        return new HuntDialogue(surroundings, talk, store.jobs(), chosen, HuntSession.of(hunt, chosen.equipment(new Agreement(surroundings.folders().settings()), again)));
    }

    private int lead(HuntDialogue session, TraceTalk talk) {
        String name = CommandWords.inQuotes(session.hunt().job().name());
        try {
            session.run();
            talk.gap();
            talk.say("For the report:");
            talk.lines(List.of("  " + CommandWords.program() + " report " + CommandWords.named(session.hunt().job().name())));
        } catch (TraceTalk.Left left) {
            talk.gap();
            talk.say("Nothing plays, and the job is kept. Go on with:");
            talk.lines(List.of("  " + CommandWords.program() + " trace --resume" + (name.startsWith("\"-") ? "=" : " ") + name + equipment.again()));
        }
        return ExitCode.FINE;
    }
}
