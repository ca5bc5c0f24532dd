package understudy.cli.signal;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.audio.Device;
import understudy.audio.Devices;
import understudy.audio.Recorded;
import understudy.bench.SignalPlan;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.JsonOption;
import understudy.cli.terminal.Progress;
import understudy.cli.terminal.Surroundings;
import understudy.pattern.NamedOutput;
import understudy.pattern.Pattern;
import understudy.pattern.PatternReader;
import understudy.plot.PlotFile;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Location;
import understudy.refusal.Refused;
import understudy.rig.OutputScale;
import understudy.view.MeasuredChannel;
import understudy.view.MeasuredText;

/** Measures a recording, or a live input, as an instrument would. */
@Command(
        name = "measure",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Measures a recording, or what comes in at an audio input.",
        footer = {
            "",
            "Examples:",
            "  understudy measure crank.wav",
            "  understudy measure crank.wav --pattern crank-60-2-hall --speed \"3000 rpm\"",
            "  understudy measure cranking.wav --pattern crank-36-1-vr --profile cranking.yaml",
            "  understudy measure --device \"USB\" --for \"5 s\" --plot spectrum.png"
        })
public final class MeasureCommand extends HouseCommand {

    private static final Range LENGTH = new Range(0.01, 600, Unit.SECOND);
    private static final Range RATE = new Range(8000, 768_000, Unit.HERTZ);
    private static final Range FULL_SCALE = new Range(0.001, 1000, Unit.VOLT);
    private static final double LIVE_SECONDS = 5;
    private static final double FILE_SECONDS = 60;
    private static final int MOST_CHANNELS = 64;

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "A recording (WAV).")
    private String fileName;

    @Option(names = "--device", paramLabel = "NAME", description = "Records from this audio input instead; a part of its name will do.")
    private String deviceName;

    @Option(names = "--for", paramLabel = "TIME", description = "Measures so much, like \"5 s\" (default: 5 s of an input, up to 1 min of a file).")
    private String length;

    @Option(names = "--rate", paramLabel = "RATE", description = "Samples a second of an input (default: 48000).")
    private String rate;

    @Option(names = "--channel", paramLabel = "NUMBER", description = "The channel to measure, counted from 1 (default: 1).")
    private String channel;

    @Option(names = "--full-scale", paramLabel = "VOLTS", description = "Peak volts of the largest sample (default: 1.414 V, as of an output that is not calibrated).")
    private String fullScale;

    @Option(names = "--pattern", paramLabel = "PATTERN", description = "What should be there: every edge is compared with this pattern.")
    private String patternName;

    @Option(names = "--output", paramLabel = "NAME", description = "The pattern's output that was recorded (default: the one on this channel).")
    private String outputName;

    @Option(names = "--speed", paramLabel = "SPEED", description = "Speed that was asked for, to compare with the one found.")
    private String speed;

    @Option(names = "--profile", paramLabel = "STEPS", description = "Speed over time that was played, as for play: every edge is then"
            + " compared with its own instant.")
    private String profile;

    @Option(names = "--plot", paramLabel = "FILE", description = "Draws the spectrum into this file, or with --pattern the timing of the edges (PNG or SVG by its ending).")
    private String plotFile;

    @Mixin
    private JsonOption json = new JsonOption();

    public MeasureCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        double seconds = given.quantity("--for", length, LENGTH, deviceName == null ? FILE_SECONDS : LIVE_SECONDS);
        int rateHz = (int) given.quantity("--rate", rate, RATE, SignalPlan.DEFAULT_RATE_HZ);
        int number = given.whole("--channel", channel, 1, MOST_CHANNELS, 1);
        double fullScaleVolts = given.quantity("--full-scale", fullScale, FULL_SCALE, OutputScale.NOMINAL.fullScaleVolts());
        Optional<Pattern> named = Optional.ofNullable(patternName).map(new Patterns()::find);
        int output = named.map(asked -> output(asked, number, given)).orElse(0);
        double askedHz = askedHz(named, given);
        Optional<Pattern> pattern = played(named, given);
        Optional<Path> plot = given.picture("--plot", plotFile, PlotFile.ENDINGS);
        Optional<Path> file = file(given);
        Optional<Device> input = input(given);
        given.refuse();

        Recorded recorded = input.isPresent() ? live(input.get(), rateHz, seconds) : Recorded.ofFile(file.orElseThrow(), seconds);
        return measure(new MeasuredChannel(recorded, number, fullScaleVolts, pattern, output, askedHz), plot);
    }

    private Recorded live(Device input, int rateHz, double seconds) {
        try (Progress progress = new Progress(surroundings, "recording from " + input.label())) {
            return Recorded.live(input, rateHz, seconds, progress::at);
        }
    }

    private int measure(MeasuredChannel asked, Optional<Path> plot) {
        Recorded recorded = asked.recorded();
        if (asked.channel() > recorded.channels().length) {
            throw new Refused("--channel: " + recorded.from() + " has " + recorded.channels().length
                    + (recorded.channels().length == 1 ? " channel" : " channels") + ", so there is no channel "
                    + asked.channel(), "give a number from 1 to " + recorded.channels().length);
        }
        try {
            MeasuredText text = asked.measure(length == null ? 0 : LENGTH.typed(length), CommandWords.wording());
            plot.ifPresent(file -> PlotFile.writeOrRefuse(text.plot(), file));
            json.print(surroundings, text::json, () -> drawnIn(text.lines(), plot));
            return ExitCode.FINE;
        } catch (Refused e) {
            throw e.in(Location.named(recorded.from() + ": channel " + asked.channel()));
        }
    }

    private int output(Pattern pattern, int number, Arguments given) {
        return Optional.ofNullable(outputName).flatMap(name -> NamedOutput.find(pattern, name, given)).map(pattern.outputs()::indexOf)
                .orElse(Math.min(number, pattern.outputs().size()) - 1);
    }

    private double askedHz(Optional<Pattern> pattern, Arguments given) {
        if (speed == null) {
            return Double.NaN;
        }
        if (pattern.isEmpty()) {
            given.problem("--speed", "without a pattern nobody knows what it is the speed of", "give --pattern too");
            return Double.NaN;
        }
        return given.speedHz(speed, pattern.get());
    }

    /** The pattern with the course of speeds that it was played with: as for play, one speed replaces the file's own. */
    private Optional<Pattern> played(Optional<Pattern> named, Arguments given) {
        if (profile != null && named.isEmpty()) {
            given.problem("--profile", "without a pattern nobody knows what follows it", "give --pattern too");
        }
        return named.map(pattern -> profile != null
                ? pattern.withProfile(given.value(PatternReader.readProfile(profile, pattern.speed())))
                : speed != null ? pattern.withProfile(Optional.empty()) : pattern);
    }

    private Optional<Path> file(Arguments given) {
        if (fileName == null && deviceName == null) {
            given.problem("measure", "there is nothing to measure", "give a file ending in .wav, or --device with the name of an"
                    + " audio input (" + CommandWords.command("devices") + " lists them)");
        } else if (fileName != null && deviceName != null) {
            given.problem("--device", "it does not go together with a file", "leave one of them out");
        } else if (fileName != null) {
            try {
                return Optional.of(Path.of(fileName));
            } catch (InvalidPathException e) {
                given.problem("FILE", "\"" + fileName + "\" is no name for a file", "give the name of a recording");
            }
        }
        return Optional.empty();
    }

    private Optional<Device> input(Arguments given) {
        if (deviceName == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(Devices.input(deviceName));
        } catch (Refused e) {
            given.add(Location.named("--device"), e);
            return Optional.empty();
        }
    }
}
