package understudy.cli;

import java.util.Arrays;
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
import understudy.rig.OutputScale;
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
            + " Needs --input.")
    private String rig;

    @Option(names = "--input", paramLabel = "KIND", description = Inputs.HELP)
    private String input;

    /** All options together with the pattern; whatever is wrong is left with {@code given}. */
    Playable read(Pattern declared, Surroundings surroundings, Given given) {
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
        Optional<Bench> bench = Bench.read(rig, input, surroundings, given);
        return playable(pattern, startHz, rateHz, outputOfChannel, bench, fit, given);
    }

    /** A signal from its parts; refused when it breaks the rig's limits or does not fit into full scale. */
    static Playable playable(Pattern pattern, double startHz, int rateHz, int[] outputOfChannel, Optional<Bench> bench,
            boolean fit, Given given) {
        List<Output> played = Arrays.stream(outputOfChannel).filter(output -> output != Channels.SILENT).distinct()
                .mapToObj(pattern.outputs()::get).toList();
        bench.ifPresent(known -> known.checkLimits(pattern, played, given));
        OutputScale scale = scale(pattern, outputOfChannel, bench, fit, given);
        return new Playable(pattern, startHz, rateHz, outputOfChannel, scale, bench);
    }

    /** The rate, if one was asked for; a device otherwise has its own. */
    OptionalInt askedRateHz(Playable playable) {
        return rate == null ? OptionalInt.empty() : OptionalInt.of(playable.rateHz());
    }

    /** A rate is often told as a bare number. */
    static int rateHz(String rate, Given given) {
        return (int) given.quantity("--rate", RateOption.withUnit(rate), RATE, Playable.DEFAULT_RATE_HZ);
    }

    private static OutputScale scale(
            Pattern pattern, int[] outputOfChannel, Optional<Bench> bench, boolean fit, Given given) {
        List<OutputFacts> facts = OutputFacts.of(pattern);
        int largest = Arrays.stream(outputOfChannel).filter(output -> output != Channels.SILENT).boxed()
                .max(Comparator.comparingDouble(output -> peakVolts(pattern, facts, output, bench))).orElse(0);
        double peakVolts = peakVolts(pattern, facts, largest, bench);
        boolean calibrated = bench.map(Bench::calibrated).orElse(false);
        if (fit) {
            return new OutputScale(peakVolts / FIT_PART, calibrated);
        }
        double fullScaleVolts = bench.map(Bench::fullScaleVolts).orElse(OutputScale.NOMINAL.fullScaleVolts());
        if (peakVolts > fullScaleVolts) {
            given.problem(pattern.id(), "its output " + facts.get(largest).output() + " reaches " + volts(peakVolts)
                    + bench.map(Bench::aroundItsMean).orElse("") + ", more than the " + volts(fullScaleVolts) + " peak that "
                    + bench.map(Bench::gives).orElse("an audio output is taken to give"),
                    "add --fit to have all outputs scaled down alike");
        }
        return new OutputScale(fullScaleVolts, calibrated);
    }

    private static double peakVolts(Pattern pattern, List<OutputFacts> facts, int output, Optional<Bench> bench) {
        double mean = bench.map(known -> known.blocked(MeanVolts.of(pattern.outputs().get(output)))).orElse(0.0);
        return Math.max(facts.get(output).highestVolts() - mean, mean - facts.get(output).lowestVolts());
    }

    private static String volts(double volts) {
        return new Quantity(volts, Unit.VOLT).rounded(4);
    }
}
