package understudy.cli;

import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says what is wrong with a command line, in this house's words: what was given, what would be right. */
final class Complaint {

    private Complaint() {}

    static List<String> of(ParameterException problem) {
        CommandLine command = problem.getCommandLine();
        String help = "'" + command.getCommandSpec().qualifiedName() + " --help' tells more";
        if (problem instanceof UnmatchedArgumentException unmatched) {
            return List.of(unknown(unmatched, command), help);
        }
        if (problem instanceof MissingParameterException missing && !missing.getMissing().isEmpty()) {
            String names = missing.getMissing().stream()
                    .map(arg -> arg instanceof OptionSpec option ? option.longestName() : arg.paramLabel())
                    .collect(Collectors.joining(", "));
            return List.of(command.getCommandName() + ": " + names + " is missing", help);
        }
        return List.of(command.getCommandName() + ": " + problem.getMessage(), help);
    }

    private static String unknown(UnmatchedArgumentException problem, CommandLine command) {
        String given = problem.getUnmatched().get(0);
        boolean top = command.getParent() == null;
        String what = problem.isUnknownOption() ? "no option " : top ? "no command " : "no use for ";
        String hint = suggestion(problem);
        return command.getCommandName() + ": there is " + what + "'" + given + "'" + hint;
    }

    private static String suggestion(UnmatchedArgumentException problem) {
        List<String> near = problem.getSuggestions();
        return near.isEmpty() ? "" : "; did you mean " + String.join(" or ", near.subList(0, Math.min(3, near.size()))) + "?";
    }
}
