package understudy.cli.hunt;

import java.util.List;
import picocli.CommandLine.Option;
import understudy.cli.terminal.Arguments;
import understudy.pattern.Speed;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.sweep.SweepStop;
import understudy.sweep.SweepStops;

/** The options that say at which speeds a sweep stops. */
final class SweepSpeedOptions {

    private static final Range TIME = new Range(0, 600, Unit.SECOND);
    private static final double USUAL_SECONDS = 1;

    @Option(
            names = "--speeds",
            paramLabel = "LIST",
            description = "Speeds in the order in which they come: \"200 rpm, 400 rpm\", or \"200 to 2000 by 200 rpm\".")
    private String speeds;

    @Option(names = "--return", description = "Then back through the same speeds: shows whether the display lags.")
    private boolean andBack;

    @Option(
            names = "--profile",
            paramLabel = "STEPS",
            description = "Instead of --speeds: a file or steps, as play has them; the display is read where it holds.")
    private String profile;

    @Option(names = "--ramp", paramLabel = "TIME", description = "Goes from one speed to the next in this time (default: 1 s).")
    private String ramp;

    @Option(names = "--dwell", paramLabel = "TIME", description = "Stands at each speed so long before you are asked (default: 1 s).")
    private String dwell;

    /** Empty where something is wrong with them. */
    List<SweepStop> read(Speed speed, Arguments given) {
        if ((speeds == null) == (profile == null)) {
            given.problem("sweep", speeds == null ? "it is not known which speeds to go through" : "--speeds and --profile both say"
                    + " which speeds to go through", speeds == null ? "give --speeds, like \"" + example(speed) + "\"" : "give one of them");
            return List.of();
        }
        SweepStops reader = new SweepStops(speed, given);
        if (profile != null) {
            for (String[] other : new String[][] {{"--return", andBack ? "" : null}, {"--ramp", ramp}, {"--dwell", dwell}}) {
                if (other[1] != null) {
                    given.problem(other[0], "the profile says that", "leave it out, or give --speeds");
                }
            }
            return reader.profile(profile);
        }
        double rampSeconds = given.quantity("--ramp", ramp, TIME, USUAL_SECONDS);
        List<SweepStop> steps = reader.list(speeds, rampSeconds, given.quantity("--dwell", dwell, TIME, USUAL_SECONDS));
        List<SweepStop> all = andBack ? SweepStops.andBack(steps, rampSeconds) : steps;
        reader.limit(Control.SPEEDS, all.size());
        return all;
    }

    /** Two speeds that this pattern has. */
    private static String example(Speed speed) {
        return speed.print(speed.defaultHz()) + ", " + speed.print(speed.toHz());
    }
}
