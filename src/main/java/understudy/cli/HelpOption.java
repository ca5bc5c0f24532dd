package understudy.cli;

import picocli.CommandLine.Option;

/** What every command understands. */
final class HelpOption {

    @Option(names = {"-h", "--help"}, usageHelp = true, description = "Shows this help.")
    private boolean help;
}
