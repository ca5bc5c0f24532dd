package understudy.cli;

import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import picocli.CommandLine.Option;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.PatternReader;
import understudy.pattern.Profile;
import understudy.quantity.Quantity;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.wave.MeanVolts;
import understudy.wave.OutputFacts;

/** The options that say which signal is meant, the same for every command that makes one. */
final class SignalOptions {

    private static final Range RATE = new Range(8000, 768_000, Unit.HERTZ);
    /** What --fit makes of the largest output: near full scale, with room for what a converter's filter overshoots. */
    private static final double FIT_PART = 0.9;

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

    @Option(names = "--input", paramLabel = "KIND", description = Inputs.HELP
            + " With OUTPUT= before it, like cam=resistive, it holds for that output alone; may be given again.")
    private List<String> inputs = List.of();

    /** All options together with the pattern; whatever is wrong is left with {@code given}. */
    Playable read(Pattern declared, Surroundings surroundings, Arguments given) {
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
        int[] outputOfChannel = ChannelMap.read(channels, pattern, given);
        Benches benches = Benches.read(rigs, inputs, pattern, played(pattern, outputOfChannel), surroundings, given);
        return playable(pattern, startHz, rateHz, outputOfChannel, benches, fit, given);
    }

    /** A signal from its parts; refused when it breaks a rig's limits or does not fit into full scale. */
    static Playable playable(Pattern pattern, double startHz, int rateHz, int[] outputOfChannel, Benches benches, boolean fit,
            Arguments given) {
        benches.checkLimits(pattern, given);
        double level = level(pattern, played(pattern, outputOfChannel), benches, fit, given);
        return new Playable(pattern, startHz, rateHz, outputOfChannel, level, benches);
    }

    private static List<Output> played(Pattern pattern, int[] outputOfChannel) {
        return Arrays.stream(outputOfChannel).filter(output -> output != Channels.SILENT).distinct()
                .mapToObj(pattern.outputs()::get).toList();
    }

    /** The rate, if one was asked for; a device otherwise has its own. */
    OptionalInt askedRateHz(Playable playable) {
        return rate == null ? OptionalInt.empty() : OptionalInt.of(playable.rateHz());
    }

    /** A rate is often told as a bare number. */
    static int rateHz(String rate, Arguments given) {
        return (int) given.quantity("--rate", RateOption.withUnit(rate), RATE, Playable.DEFAULT_RATE_HZ);
    }

    /** What all volts are multiplied by: 1, or what --fit makes of the output with the least room. */
    private static double level(Pattern pattern, List<Output> played, Benches benches, boolean fit, Arguments given) {
        if (played.isEmpty()) {
            return 1; // every channel is silent, which is refused already
        } else if (fit) {
            return fittedLevel(pattern, played, benches);
        }
        List<OutputFacts> facts = OutputFacts.of(pattern);
        Output tightest = tightest(pattern, played, facts, benches);
        if (room(tightest, pattern, facts, benches) < 1) {
            Optional<Bench> bench = benches.of(tightest);
            given.problem(pattern.id(), "its output " + tightest.name() + " reaches "
                    + volts(peakVolts(tightest, pattern, facts, benches)) + bench.map(Bench::aroundItsMean).orElse("")
                    + ", more than the " + volts(Playable.fullScaleVolts(tightest, benches)) + " peak that "
                    + bench.map(Bench::gives).orElse("an audio output is taken to give"),
                    "add --fit to have all outputs scaled down alike");
        }
        return 1;
    }

    /** What --fit multiplies all volts by, for these outputs that play together. Preflight judges at the same level. */
    static double fittedLevel(Pattern pattern, List<Output> played, Benches benches) {
        List<OutputFacts> facts = OutputFacts.of(pattern);
        return FIT_PART * room(tightest(pattern, played, facts, benches), pattern, facts, benches);
    }

    private static Output tightest(Pattern pattern, List<Output> played, List<OutputFacts> facts, Benches benches) {
        return Collections.min(played, Comparator.comparingDouble(output -> room(output, pattern, facts, benches)));
    }

    /** What full scale gives, as a multiple of what the output asks for. */
    private static double room(Output output, Pattern pattern, List<OutputFacts> facts, Benches benches) {
        return Playable.fullScaleVolts(output, benches) / peakVolts(output, pattern, facts, benches);
    }

    private static double peakVolts(Output output, Pattern pattern, List<OutputFacts> facts, Benches benches) {
        double mean = benches.of(output).map(known -> known.blocked(MeanVolts.of(output))).orElse(0.0);
        OutputFacts fact = facts.get(pattern.outputs().indexOf(output));
        return Math.max(fact.highestVolts() - mean, mean - fact.lowestVolts());
    }

    private static String volts(double volts) {
        return new Quantity(volts, Unit.VOLT).rounded(4);
    }
}
