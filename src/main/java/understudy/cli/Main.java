package understudy.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/**
 * The way in, and the only place that ends the process.
 *
 * <p>Exit codes: 0 fine, also after the user's own stop; 1 failed; 2 bad input, with nothing done.
 */
public final class Main {

    static final int FINE = 0;
    static final int FAILED = 1;
    static final int BAD_INPUT = 2;

    private Main() {}

    public static void main(String[] args) {
        // Java 22 to 24 hand out a console even where nobody sits; this asks for the one that tells the truth
        System.setProperty("jdk.console", "java.base");
        System.exit(run(Surroundings.ofThisProcess(), args));
    }

    /** Runs one command and gives its exit code; nothing escapes but what the surroundings saw. */
    static int run(Surroundings surroundings, String... args) {
        try {
            return commandLine(surroundings).execute(args);
        } catch (Throwable e) {
            return defect(e, surroundings);
        } finally {
            surroundings.out().flush();
            surroundings.err().flush();
        }
    }

    static CommandLine commandLine(Surroundings surroundings) {
        CommandLine root = new CommandLine(new Root());
        root.addSubcommand(new PatternsCommand(surroundings));
        root.addSubcommand(new ShowCommand(surroundings));
        root.addSubcommand(new CheckCommand(surroundings));
        root.addSubcommand(new PlayCommand(surroundings));
        root.addSubcommand(new RenderCommand(surroundings));
        root.addSubcommand(new MeasureCommand(surroundings));
        root.addSubcommand(new CalibrateCommand(surroundings));
        root.addSubcommand(new DevicesCommand(surroundings));
        root.addSubcommand(new CautionsCommand(surroundings));
        root.addSubcommand(new CompletionCommand(surroundings));
        root.setOut(surroundings.out());
        root.setErr(surroundings.err());
        root.setColorScheme(CommandLine.Help.defaultColorScheme(surroundings.colour() ? Ansi.ON : Ansi.OFF));
        root.setUsageHelpWidth(Paragraph.WIDTH);
        root.setParameterExceptionHandler((problem, args) -> {
            Complaint.of(problem).forEach(surroundings.err()::println);
            return BAD_INPUT;
        });
        root.setExecutionExceptionHandler((exception, command, parsed) -> {
            if (exception instanceof BadInput bad) {
                bad.problems().forEach(surroundings.err()::println);
                return BAD_INPUT;
            }
            if (exception instanceof Failed) {
                surroundings.err().println(exception.getMessage());
                return FAILED;
            }
            return defect(exception, surroundings);
        });
        return root;
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
        return FAILED;
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
            return BAD_INPUT;
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
