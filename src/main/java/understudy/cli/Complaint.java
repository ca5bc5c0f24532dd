package understudy.cli;

import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;
import understudy.text.Nearest;

/** What is wrong with a command line, in this house's words: what was given, what would be right. */
final class Complaint {

    private Complaint() {}

    static List<String> of(ParameterException problem) {
        CommandLine command = problem.getCommandLine();
        String help = "'" + command.getCommandSpec().qualifiedName() + " --help' shows more";
        if (problem instanceof UnmatchedArgumentException unmatched) {
            return List.of(unknown(unmatched, command), help);
        }
        if (problem instanceof MissingParameterException missing && !missing.getMissing().isEmpty()) {
            ArgSpec first = missing.getMissing().get(0);
            if (first instanceof OptionSpec option && problem.getMessage().contains("parameter for option")) {
                return List.of(command.getCommandName() + ": " + option.longestName() + " needs " + option.paramLabel()
                        + " behind it", help);
            }
            String names = missing.getMissing().stream()
                    .map(arg -> arg instanceof OptionSpec option ? option.longestName() : arg.paramLabel())
                    .collect(Collectors.joining(", "));
            return List.of(command.getCommandName() + ": " + names + " is missing", help);
        }
        return List.of(command.getCommandName() + ": " + problem.getMessage(), help);
    }

    private static String unknown(UnmatchedArgumentException problem, CommandLine command) {
        String given = problem.getUnmatched().get(0);
        if (!problem.isUnknownOption() && command.getSubcommands().isEmpty()) {
            return command.getCommandName() + ": '" + given + "' is one word too many; a value with a space in it needs"
                    + " quotes, like --speed \"800 rpm\"";
        }
        boolean option = problem.isUnknownOption();
        List<String> near = Nearest.to(given, option ? command.getCommandSpec().optionsMap().keySet() : command.getSubcommands().keySet());
        String hint = near.isEmpty() ? "" : "; did you mean " + String.join(" or ", near.subList(0, Math.min(2, near.size()))) + "?";
        return command.getCommandName() + ": there is no " + (option ? "option" : "command") + " '" + given + "'" + hint;
    }
}
