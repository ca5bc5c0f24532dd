package understudy.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import understudy.cli.hunt.ExpectCommand;
import understudy.cli.hunt.JobsCommand;
import understudy.cli.hunt.ReportCommand;
import understudy.cli.hunt.SweepCommand;
import understudy.cli.hunt.TraceCommand;
import understudy.cli.rig.CalibrateCommand;
import understudy.cli.rig.DividerCommand;
import understudy.cli.rig.InputCommand;
import understudy.cli.rig.RigCommand;
import understudy.cli.signal.CautionsCommand;
import understudy.cli.signal.CheckCommand;
import understudy.cli.signal.DevicesCommand;
import understudy.cli.signal.MeasureCommand;
import understudy.cli.signal.PatternsCommand;
import understudy.cli.signal.PlayCommand;
import understudy.cli.signal.PreflightCommand;
import understudy.cli.signal.RenderCommand;
import understudy.cli.signal.ShowCommand;
import understudy.cli.terminal.CommandSet;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HelpOption;
import understudy.cli.terminal.Surroundings;
import understudy.refusal.Refused;
import understudy.text.Paragraph;

/**
 * The way in, and the only place that ends the process.
 *
 * <p>Exit codes: 0 fine, also after the user's own stop; 1 failed; 2 bad input, with nothing done.
 */
public final class Main {

    /** Needs to know all the others. */
    private static final String COMPLETION = "completion";

    /** In the order of the overview. */
    private static final CommandSet COMMANDS = new CommandSet()
            .with("patterns", PatternsCommand::new)
            .with("show", ShowCommand::new)
            .with("check", CheckCommand::new)
            .with("play", PlayCommand::new)
            .with("render", RenderCommand::new)
            .with("measure", MeasureCommand::new)
            .with("calibrate", CalibrateCommand::new)
            .with("devices", DevicesCommand::new)
            .withGroup("rig", RigCommand::with)
            .with("divider", DividerCommand::new)
            .with("input", InputCommand::new)
            .with("preflight", PreflightCommand::new)
            .with("trace", TraceCommand::new)
            .with("report", ReportCommand::new)
            .withGroup("jobs", JobsCommand::with)
            .with("expect", ExpectCommand::new)
            .with("sweep", SweepCommand::new)
            .with("cautions", CautionsCommand::new)
            .with("guide", GuideCommand::new)
            .with(COMPLETION, CompletionCommand::new);

    private Main() {}

    public static void main(String[] args) {
        // Java 22 to 24 hand out a console even where nobody sits; this asks for the one that tells the truth
        System.setProperty("jdk.console", "java.base");
        System.exit(run(Surroundings.ofThisProcess(), args));
    }

    /** Runs one command and gives its exit code; nothing escapes but what the surroundings saw. */
    static int run(Surroundings surroundings, String... args) {
        CommandWords.calledAs(surroundings.env().getOrDefault("UNDERSTUDY_CALLED", "understudy"));
        Paragraph.fit(surroundings.columns());
        try {
            return commandLine(surroundings, args).execute(args);
        } catch (Throwable e) {
            return defect(e, surroundings);
        } finally {
            surroundings.out().flush();
            surroundings.err().flush();
        }
    }

    /** With the command that the words name; without words, and for completion, with every one. */
    static CommandLine commandLine(Surroundings surroundings, String... words) {
        boolean version = words.length == 1 && List.of("--version", "-V").contains(words[0]);
        boolean every = words.length == 1 && words[0].equals(COMPLETION);
        CommandLine root = version ? new CommandLine(new Root())
                : COMMANDS.below(new Root(), surroundings, every ? new String[0] : words);
        root.setOut(surroundings.out());
        root.setErr(surroundings.err());
        root.setColorScheme(CommandLine.Help.defaultColorScheme(surroundings.colour() ? Ansi.ON : Ansi.OFF));
        root.setUsageHelpWidth(Paragraph.width());
        root.setCommandName(CommandWords.program());
        asTyped(root);
        root.setParameterExceptionHandler((problem, args) -> {
            Complaint.of(problem).forEach(surroundings.err()::println);
            return ExitCode.BAD_INPUT;
        });
        root.setExecutionExceptionHandler((exception, command, parsed) -> {
            if (exception instanceof Refused refused) {
                // a person reads lines that fit, a script one line for each reason
                refused.refusals().stream().map(CommandWords::text).flatMap(text -> surroundings.terminal() ? Paragraph.lines(text).stream()
                        : Stream.of(text)).forEach(surroundings.err()::println);
                return refused.mend() == Refused.Mend.INPUT ? ExitCode.BAD_INPUT : ExitCode.FAILED;
            }
            return defect(exception, surroundings);
        });
        return root;
    }

    /** Examples in the help can be typed as they stand. */
    private static void asTyped(CommandLine command) {
        CommandLine.Model.UsageMessageSpec usage = command.getCommandSpec().usageMessage();
        usage.footer(Arrays.stream(usage.footer()).map(CommandWords::asTyped).toArray(String[]::new));
        command.getSubcommands().values().forEach(Main::asTyped);
    }

    private static int defect(Throwable e, Surroundings surroundings) {
        PrintWriter err = surroundings.err();
        err.println("this is a defect in Understudy: " + e);
        StringWriter details = new StringWriter();
        e.printStackTrace(new PrintWriter(details, true));
        String name = "defect-" + DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss").withZone(ZoneOffset.UTC)
                .format(surroundings.clock().instant()) + ".txt";
        Path file = surroundings.folders().state().resolve(name);
        try {
            Files.createDirectories(file.getParent());
            Files.writeString(file, details.toString());
            err.println("the details are in " + file + "; please send them with what you were doing");
        } catch (IOException notWritten) {
            err.println("its details, which could not be written to " + file + ":");
            err.print(details);
        }
        return ExitCode.FAILED;
    }

    @Command(
            name = "understudy",
            description = "Stands in for a sensor: plays the sensor's signal from an audio output.",
            versionProvider = Version.class,
            synopsisSubcommandLabel = "COMMAND",
            commandListHeading = "%nCommands:%n",
            footer = {
                "",
                "Examples:",
                "  understudy patterns",
                "  understudy show crank-36-1-vr",
                "  understudy play crank-36-1-vr --speed \"800 rpm\"",
                "",
                "A command's own help: understudy play --help",
                "Exit codes: 0 fine, 1 failed, 2 bad input (then nothing was done)."
            })
    private static final class Root implements Callable<Integer> {

        @Mixin
        private HelpOption help;

        @Option(names = {"-V", "--version"}, versionHelp = true, description = "Shows the version.")
        private boolean version;

        @Spec
        private CommandSpec spec;

        /** Without a command: the overview, as bad input, so that a script notices. */
        @Override
        public Integer call() {
            spec.commandLine().usage(spec.commandLine().getErr());
            return ExitCode.BAD_INPUT;
        }
    }

    /** The version that the jar was built as. */
    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = Main.class.getPackage().getImplementationVersion();
            return new String[] {"understudy " + (version == null ? "(not from a jar)" : version)};
        }
    }
}
