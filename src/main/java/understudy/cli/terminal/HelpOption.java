package understudy.cli.terminal;

import picocli.CommandLine.Option;

/** What every command understands. */
public final class HelpOption {

    @Option(names = {"-h", "--help"}, usageHelp = true, description = "Shows this help.")
    private boolean help;
}
