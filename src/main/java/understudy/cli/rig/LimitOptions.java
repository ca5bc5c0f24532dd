package understudy.cli.rig;

import java.util.Optional;
import picocli.CommandLine.Option;
import understudy.cli.terminal.Arguments;
import understudy.rig.CurrentLimits;
import understudy.rig.LimitChange;

/** The options that change the current limits: downwards freely, upwards only with a reason, which is recorded. */
final class LimitOptions {

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
    CurrentLimits read(CurrentLimits otherwise, Arguments given) {
        return new LimitChange(Optional.ofNullable(normal), Optional.ofNullable(fault), Optional.ofNullable(override),
                Optional.ofNullable(because)).of(otherwise, given);
    }
}
