package understudy.cli;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.Option;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.rig.Amounts;
import understudy.rig.Limits;

/** The options that change the current limits: downwards freely, upwards only with a reason, which is recorded. */
final class LimitOptions {

    private static final Range AMPS = new Range(1e-6, 1, Unit.AMPERE);
    private static final Pattern FROM_TO = Pattern.compile("(.+?)\\s+to\\s+(.+)");

    @Option(names = "--limit-normal", paramLabel = "AMPS", description = "Lowers the limit for normal use below 1 mA.")
    private String normal;

    @Option(names = "--limit-fault", paramLabel = "AMPS", description = "Lowers the limit for a single fault below 5 mA.")
    private String fault;

    @Option(
            names = "--override-limit",
            paramLabel = "FROM-TO",
            description = "Raises a limit, said in full, like \"5 mA to 12 mA\"; needs --because.")
    private String override;

    @Option(names = "--because", paramLabel = "REASON", description = "Why that is right here; it is recorded and shown.")
    private String because;

    boolean given() {
        return normal != null || fault != null || override != null || because != null;
    }

    /** As given, the rest as in {@code otherwise}. */
    Limits read(Limits otherwise, Arguments given) {
        double normalAmps = lowered("--limit-normal", normal, Limits.STANDARD.normalAmps(), otherwise.normalAmps(), given);
        double faultAmps = lowered("--limit-fault", fault, Limits.STANDARD.faultAmps(), otherwise.faultAmps(), given);
        if (because != null && override == null) {
            given.problem("--because", "there is nothing to give a reason for", "add --override-limit, or leave it out");
        }
        if (override != null) {
            if (because == null || because.isBlank()) {
                given.problem("--override-limit", "it needs a reason", "add --because \"...\": why this module stands more than"
                        + " the limit, and how you know");
                return otherwise;
            }
            double[] raised = raised(given);
            if (raised[0] == Limits.STANDARD.normalAmps()) {
                normalAmps = raised[1];
            } else if (raised[0] == Limits.STANDARD.faultAmps()) {
                faultAmps = raised[1];
            }
        }
        double n = normalAmps;
        double f = faultAmps;
        return given.attempt("--limit-normal", () -> new Limits(n, f, because == null ? otherwise.override() : Optional.of(because)))
                .orElse(otherwise);
    }

    private static double lowered(String option, String written, double standard, double otherwise, Arguments given) {
        double amps = given.quantity(option, written, AMPS, otherwise);
        if (written != null && amps > standard) {
            given.problem(option, Amounts.print(amps, Unit.AMPERE) + " is more than the standard "
                    + Amounts.print(standard, Unit.AMPERE), "a higher one takes --override-limit and a reason");
            return otherwise;
        }
        return amps;
    }

    /** The standard limit that is raised, and to what; two NaN when it is wrong. */
    private double[] raised(Arguments given) {
        Matcher matcher = FROM_TO.matcher(override.strip());
        if (!matcher.matches()) {
            given.problem("--override-limit", "\"" + override + "\" does not say from what to what",
                    "write \"1 mA to 2 mA\" for normal use, or \"5 mA to 12 mA\" for a fault");
            return new double[] {Double.NaN, Double.NaN};
        }
        double from = given.quantity("--override-limit", matcher.group(1), AMPS, Double.NaN);
        double to = given.quantity("--override-limit", matcher.group(2), AMPS, Double.NaN);
        boolean standard = from == Limits.STANDARD.normalAmps() || from == Limits.STANDARD.faultAmps();
        if (!Double.isNaN(from) && !standard) {
            given.problem("--override-limit", "no limit stands at " + Amounts.print(from, Unit.AMPERE),
                    "begin with the one that is raised: 1 mA for normal use, or 5 mA for a fault");
        } else if (to <= from) {
            given.problem("--override-limit", Amounts.print(to, Unit.AMPERE) + " is no higher than "
                    + Amounts.print(from, Unit.AMPERE), "lower a limit with --limit-normal or --limit-fault");
        }
        return new double[] {from, to};
    }
}
