package understudy.cli.signal;

import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.audio.Destination;
import understudy.audio.PlayerEnd;
import understudy.audio.PlayerReport;
import understudy.audio.PlayerSettings;
import understudy.bench.Clearance;
import understudy.bench.LiveHand;
import understudy.bench.Outlet;
import understudy.bench.Playback;
import understudy.bench.PlayedLast;
import understudy.bench.SignalPlan;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ConsentDialogue;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.pattern.Pattern;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Refused;
import understudy.text.WholeFile;
import understudy.view.EndText;
import understudy.view.StatusLine;
import understudy.wave.Hand;

/** Plays a signal in real time. */
@Command(
        name = "play",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Plays a pattern's signal to an audio output.",
        footer = {
            "",
            "Examples:",
            "  understudy play crank-36-1-vr --speed \"800 rpm\"",
            "  understudy play crank-36-1-vr --device \"USB\" --for \"30 s\"",
            "  understudy play wheel-speed-44-vr --fault \"fault: dropout, length: 30 ms\"",
            "  understudy play crank-36-1-vr --to silent",
            "",
            "Keys while it plays: up and down change the speed, right and left change it a",
            "little, s lets you type one, + and - change the level, 1 to 9 switch faults,",
            "space stops."
        })
public final class PlayCommand extends HouseCommand {

    private static final Range LENGTH = new Range(0.1, 1_000_000, Unit.SECOND);
    private static final Range LATENCY = new Range(0.005, 1, Unit.SECOND);

    @Parameters(paramLabel = "PATTERN", description = "A pattern, by name or file.")
    private String patternName;

    @Mixin
    private SignalOptions options;

    @Option(names = "--for", paramLabel = "TIME", description = "Plays so long, like \"30 s\" (default: until stopped).")
    private String length;

    @Mixin
    private DestinationOptions place;

    @Option(names = "--last", description = "With the rig, the input and the speed with which this pattern was played last.")
    private boolean last;

    @Option(names = "--latency", paramLabel = "TIME", description = "How much is sent ahead, 5 ms to 1 s: a key acts so much later.")
    private String latency;

    @Option(names = "--yes", description = "Says yes to the cautions, for this time; for scripts.")
    private boolean yes;

    public PlayCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        Pattern pattern = new Patterns().find(patternName);
        offerLast(pattern.id(), given);
        SignalPlan asked = options.read(pattern, surroundings, given);
        PlayerSettings settings = settings(given);
        Outlet outlet = place.read(asked.hookups().device(), given);
        given.refuse();

        Destination destination = outlet.destination(asked, options.askedRateHz(asked));
        SignalPlan plan = asked.atRate(destination.rateHz());
        plan.checkRate(given);
        given.refuse();
        surroundings.out().println(outlet.note(destination));
        Clearance clearance = new ConsentDialogue(surroundings, yes).ask(plan, outlet.leaves());
        PlanNotes.lines(plan).forEach(surroundings.out()::println);
        return report(play(plan, destination, settings, clearance));
    }

    /** What was played last is used where that is asked for, and offered where no rig is named. */
    private void offerLast(String pattern, Arguments given) {
        Optional<PlayedLast> known = PlayedLast.of(pattern, surroundings.folders().settings());
        if (last && known.isEmpty()) {
            given.problem("--last", "this pattern was not played through a rig yet", "give --rig and --input");
        } else if (last) {
            options.as(known.get());
        } else if (!options.namesRig()) {
            known.map(CommandWords::text).ifPresent(words -> surroundings.out().println("played last with " + words + "; --last does so again"));
        }
    }

    private void keepLast(SignalPlan plan, double endHz) {
        options.toKeep(plan.pattern(), endHz).ifPresent(kept -> {
            try {
                kept.keep(surroundings.folders().settings());
            } catch (IOException e) {
                surroundings.err().println("with what it was played could not be kept: " + WholeFile.reason(e));
            }
        });
    }

    private PlayerSettings settings(Arguments given) {
        PlayerSettings settings = PlayerSettings.DEFAULT;
        if (latency != null) {
            settings = settings.withTargetFill(duration(given.quantity("--latency", latency, LATENCY, LATENCY.to())));
        }
        if (length != null) {
            settings = settings.withDuration(duration(given.quantity("--for", length, LENGTH, LENGTH.to())));
        }
        return settings;
    }

    private static Duration duration(double seconds) {
        return Duration.ofNanos(Math.round(seconds * 1e9));
    }

    private PlayerReport play(SignalPlan plan, Destination destination, PlayerSettings settings, Clearance clearance) {
        AtomicReference<Hand> hand = plan.hand();
        Playback playback = Playback.open(plan, hand, destination, settings, clearance);
        PlayerReport report = new PlaySession(surroundings, playback, new LiveHand(plan.pattern(), hand),
                new StatusLine(plan.pattern(), destination.rateHz())).run();
        keepLast(plan, Double.isNaN(hand.get().speedHz()) ? plan.startHz() : hand.get().speedHz());
        playback.shortage().map(CommandWords::text).ifPresent(surroundings.out()::println);
        return report;
    }

    private int report(PlayerReport report) {
        EndText.lines(report).forEach(surroundings.out()::println);
        if (report.end() instanceof PlayerEnd.Lost lost) {
            throw Refused.setup(lost.reason(), "");
        }
        return ExitCode.FINE;
    }
}
