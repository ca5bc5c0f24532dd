package understudy.cli.signal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import picocli.CommandLine.Option;
import understudy.bench.ChannelMap;
import understudy.bench.Hookups;
import understudy.bench.PerOutput;
import understudy.bench.PlayedLast;
import understudy.bench.SignalPlan;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.Surroundings;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.PatternReader;
import understudy.pattern.Profile;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Control;

/** The options that say which signal is meant, the same for every command that makes one. */
public final class SignalOptions {

    public static final String INPUT_HELP = "The module's input: a kind that 'understudy input' lists, like reluctor-adaptive, with what you"
            + " know of it, like \"pulled-up-5-v, pull-up: 10k 5%%, low: 1.5 V\".";

    private static final Range RATE = new Range(8000, 768_000, Unit.HERTZ);

    @Option(names = "--speed", paramLabel = "SPEED", description = "Speed, like \"800 rpm\", \"120 Hz\" or \"45 km/h\".")
    private String speed;

    @Option(names = "--rate", paramLabel = "RATE", description = "Samples a second, like 48000 or \"96 kHz\" (default: 48000).")
    private String rate;

    @Option(
            names = "--channels",
            paramLabel = "OUTPUTS",
            description = "Outputs in channel order, like crank,cam or -,crank (- is a silent channel),"
                    + " or a number of channels.")
    private String channels;

    @Option(
            names = "--profile",
            paramLabel = "STEPS",
            description = "Speed over time: a file, or steps like"
                    + " \"ramp: 6000 rpm, from: 500 rpm, for: 5 s; hold: 6000 rpm, for: 2 s\".")
    private String profile;

    @Option(
            names = "--fault",
            paramLabel = "FAULT",
            description = "A fault of the pattern by its name, or a new one like"
                    + " \"fault: weak tooth, tooth: 5, strength: 40 %%\". May be given again.")
    private List<String> faults = List.of();

    @Option(names = "--seed", paramLabel = "NUMBER", description = "Starts everything that goes by chance; the same number, the same signal.")
    private String seed;

    @Option(names = "--fit", description = "Scales all outputs alike, the largest to 90 %% of full scale.")
    private boolean fit;

    @Option(names = "--rig", paramLabel = "NAME", description = "The rig it goes through; volts are then volts at the pins."
            + " Needs --input. With OUTPUT= before it, like cam=hall-box, it holds for that output alone; may be given again.")
    private List<String> rigs = List.of();

    @Option(names = "--input", paramLabel = "KIND", description = SignalOptions.INPUT_HELP
            + " With OUTPUT= before it, like cam=resistive, it holds for that output alone; may be given again.")
    private List<String> inputs = List.of();

    boolean namesRig() {
        return !rigs.isEmpty();
    }

    /** Where nothing else is given: as it was played last. */
    void as(PlayedLast last) {
        rigs = rigs.isEmpty() && inputs.isEmpty() ? last.rigs() : rigs;
        inputs = inputs.isEmpty() ? last.inputs() : inputs;
        fit |= last.fit();
        speed = speed == null && profile == null ? last.speed() : speed;
    }

    /** To be remembered, if it goes through a rig. */
    Optional<PlayedLast> toKeep(Pattern pattern, double endHz) {
        return Optional.of(new PlayedLast(pattern.id(), rigs, inputs, fit, pattern.speed().print(endHz))).filter(kept -> !rigs.isEmpty());
    }

    /** All options together with the pattern; whatever is wrong is left with {@code given}. */
    SignalPlan read(Pattern declared, Surroundings surroundings, Arguments given) {
        double startHz = given.speedHz(speed, declared);
        Pattern pattern = declared;
        if (profile != null) {
            Optional<Profile> read = given.value(PatternReader.readProfile(profile, declared.speed()));
            pattern = pattern.withProfile(read);
        } else if (speed != null) {
            // who asks for one speed doesn't want the file's own course of speeds
            pattern = pattern.withProfile(Optional.empty());
        }
        pattern = given.withFaults(faults, pattern);
        if (seed != null) {
            pattern = pattern.withSeed(given.whole("--seed", seed, 0, Integer.MAX_VALUE, 0));
        }
        int rateHz = rateHz(rate, given);
        ChannelMap map = channels == null ? ChannelMap.all(pattern) : ChannelMap.read(channels, pattern, given);
        Hookups hookups = hookups(rigs, inputs, pattern, map.played(pattern), surroundings, given);
        SignalPlan plan = SignalPlan.of(pattern, startHz, rateHz, map, hookups, fit);
        plan.check(given);
        return plan;
    }

    /** What the outputs that are played go through. */
    static Hookups hookups(List<String> rigs, List<String> inputs, Pattern pattern, List<Output> played, Surroundings surroundings,
            Arguments given) {
        return Hookups.read(PerOutput.read(Control.RIG, rigs, pattern, given), PerOutput.read(Control.INPUT, inputs, pattern, given),
                played, surroundings::rig, given);
    }

    /** The rate, if one was asked for; a device otherwise has its own. */
    OptionalInt askedRateHz(SignalPlan plan) {
        return rate == null ? OptionalInt.empty() : OptionalInt.of(plan.rateHz());
    }

    /** A rate is often told as a bare number. */
    static int rateHz(String rate, Arguments given) {
        return (int) given.quantity("--rate", rate, RATE, SignalPlan.DEFAULT_RATE_HZ);
    }
}
