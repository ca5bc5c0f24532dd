package understudy.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.Function;
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

    /** By name, in the order of the overview. */
    private static final Map<String, Function<Surroundings, Object>> COMMANDS = commands();

    private Main() {}

    private static Map<String, Function<Surroundings, Object>> commands() {
        Map<String, Function<Surroundings, Object>> commands = new LinkedHashMap<>();
        commands.put("patterns", PatternsCommand::new);
        commands.put("show", ShowCommand::new);
        commands.put("check", CheckCommand::new);
        commands.put("play", PlayCommand::new);
        commands.put("render", RenderCommand::new);
        commands.put("measure", MeasureCommand::new);
        commands.put("calibrate", CalibrateCommand::new);
        commands.put("devices", DevicesCommand::new);
        commands.put("rig", RigCommand::with);
        commands.put("divider", DividerCommand::new);
        commands.put("input", InputCommand::new);
        commands.put("preflight", PreflightCommand::new);
        commands.put("trace", TraceCommand::new);
        commands.put("report", ReportCommand::new);
        commands.put("jobs", JobsCommand::with);
        commands.put("expect", ExpectCommand::new);
        commands.put("sweep", SweepCommand::new);
        commands.put("cautions", CautionsCommand::new);
        commands.put("guide", GuideCommand::new);
        commands.put(COMPLETION, CompletionCommand::new);
        return commands;
    }

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

    /** Every command, for help and completion. */
    static CommandLine commandLine(Surroundings surroundings) {
        return commandLine(surroundings, COMMANDS.values());
    }

    /** The one command that is asked for by name, since reading the declarations of all would take longer than most run. */
    private static CommandLine commandLine(Surroundings surroundings, String[] args) {
        if (args.length == 1 && List.of("--version", "-V").contains(args[0])) {
            return commandLine(surroundings, List.of());
        }
        Function<Surroundings, Object> asked = args.length == 0 ? null : COMMANDS.get(args[0]);
        return asked == null || args[0].equals(COMPLETION) && args.length == 1
                ? commandLine(surroundings)
                : commandLine(surroundings, List.of(asked));
    }

    private static CommandLine commandLine(Surroundings surroundings, Collection<Function<Surroundings, Object>> commands) {
        CommandLine root = new CommandLine(new Root());
        commands.forEach(command -> root.addSubcommand(command.apply(surroundings)));
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
