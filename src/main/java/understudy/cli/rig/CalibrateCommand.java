package understudy.cli.rig;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import understudy.audio.Device;
import understudy.audio.DeviceChoice;
import understudy.audio.Devices;
import understudy.bench.SignalPlan;
import understudy.calibrate.TestedOutput;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.JsonOption;
import understudy.cli.terminal.Surroundings;
import understudy.plot.PlotFile;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Location;
import understudy.refusal.Refused;
import understudy.rig.AudioOutput;
import understudy.store.RigCalibrations;
import understudy.text.Json;

/** Measures what an audio output really gives. */
@Command(
        name = "calibrate",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Proves an audio output, with a meter or with one patch cable.",
        footer = {
            "",
            "Examples:",
            "  understudy calibrate --meter --device \"USB\" --load \"1 kohm\"",
            "  understudy calibrate --loopback --device \"USB\" --input \"USB\"",
            "  understudy calibrate --loopback --rig bench-1",
            "  understudy calibrate --loopback --plot response.png --out response.json",
            "",
            "Nothing but the meter, or the patch cable, may be connected to the output."
        })
public final class CalibrateCommand extends HouseCommand {

    private static final Range RATE = new Range(8000, 768_000, Unit.HERTZ);
    private static final Range LEVEL = new Range(1, 100, Unit.PERCENT);
    private static final double USUAL_PERCENT = 50;
    private static final int MOST_CHANNELS = 16;

    @Option(names = "--meter", description = "With a voltmeter: measures volts, and with --load the output resistance.")
    private boolean meter;

    @Option(names = "--loopback", description = "With a patch cable from output to input: measures response, polarity, clock, noise.")
    private boolean loopback;

    @Option(names = "--rig", paramLabel = "NAME", description = "Keeps the result with this rig, and compares it with the last one.")
    private String rigName;

    @Option(names = "--check", description = "Only compares with what the rig has kept, and keeps nothing.")
    private boolean check;

    @Option(names = "--device", paramLabel = "NAME", description = "The audio output, or a part of its name (default: the rig's, or the system's).")
    private String deviceName;

    @Option(names = "--channel", paramLabel = "NUMBER", description = "The output's channel, counted from 1 (default: 1).")
    private String channel;

    @Option(names = "--rate", paramLabel = "RATE", description = "Samples a second (default: 48000, or what the output opens with).")
    private String rate;

    @Option(names = "--level", paramLabel = "PART", description = "How loud, of full scale (default: 50 %%).")
    private String level;

    @Mixin
    private MeterOptions meterOptions;

    @Mixin
    private LoopbackOptions loopbackOptions;

    @Option(names = "--plot", paramLabel = "FILE", description = "Draws the response into this file (PNG or SVG by its ending).")
    private String plotFile;

    @Option(names = "--out", paramLabel = "FILE", description = "Writes the result as JSON into this file too.")
    private String out;

    @Mixin
    private JsonOption json = new JsonOption();

    @Option(names = "--yes", description = "Nothing else is connected, so it need not ask; for scripts.")
    private boolean yes;

    public CalibrateCommand(Surroundings surroundings) {
        super(surroundings);
    }

    /** What both ways have in common. */
    record Setup(TestedOutput tested, boolean yes, PrintWriter talk) {

        DeviceChoice output() {
            return tested.output();
        }

        int channel() {
            return tested.channel();
        }

        double level() {
            return tested.level();
        }
    }

    /**
     * What came of it.
     *
     * @param lines   for people
     * @param json    for scripts
     * @param failure why it must not be relied on
     * @param values  to compare with the next time, by name with the unit in it
     * @param proven  the output, with what is known now
     */
    record Result(List<String> lines, Object json, Optional<String> failure, Map<String, Double> values,
            AudioOutput proven) {}

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        if (meter == loopback) {
            given.problem("calibrate", meter ? "--meter and --loopback don't go together" : "it must know how",
                    "give --meter to read a voltmeter, or --loopback with a patch cable from output to input");
        }
        int number = given.whole("--channel", channel, 1, MOST_CHANNELS, 1);
        int rateHz = (int) given.quantity("--rate", rate, RATE, SignalPlan.DEFAULT_RATE_HZ);
        double part = given.quantity("--level", level, LEVEL, USUAL_PERCENT) / 100;
        Path plot = given.picture("--plot", plotFile, PlotFile.ENDINGS).orElse(null);
        if (plotFile != null && !loopback) {
            given.problem("--plot", "a meter gives nothing to draw", "leave it out, or use --loopback");
        }
        Path file = given.jsonFile("--out", out).orElse(null);
        if (check && rigName == null) {
            given.problem("--check", "there is nothing to compare with", "give --rig too");
        }
        LoopbackOptions.Asked cable = loopbackOptions.read(loopback, given);
        Optional<RigCalibrations> rig = Optional.ofNullable(rigName).map(name -> new RigCalibrations(surroundings::store,
                surroundings.clock(), name, meter ? "meter" : "loopback", meter || cable.fullScaleVolts().isPresent()));
        Optional<Device> output = output(rig, given);
        MeterOptions.Asked asked = meterOptions.read(given);
        given.refuse();
        rig.filter(kept -> check).ifPresent(RigCalibrations::mustHaveOne);

        Device there = output.orElseThrow(
                () -> Refused.setup("this machine has no audio output", "plug one in, then try again"));
        Setup setup = new Setup(new TestedOutput(choice(there, number, rateHz), number - 1, part), yes, json.talk(surroundings));
        setup.talk().println("audio output \"" + setup.output().device().label() + "\", " + setup.output().rateHz() + " Hz, "
                + setup.output().format().bits() + " bits, channel " + number);
        AudioOutput before = rig.map(RigCalibrations::output).orElse(AudioOutput.NOMINAL);
        Result result;
        try {
            result = run(setup, asked, cable, before, plot);
        } catch (Refused e) {
            rig.filter(kept -> !check).ifPresent(kept -> kept.failed(setup.tested(), e.getMessage()));
            throw e;
        }
        List<String> onRig = rig.map(kept -> onRig(kept, setup.tested(), result)).orElse(List.of());
        tell(result, onRig, setup, plot, file);
        if (check) {
            setup.talk().println(rig.orElseThrow().verdict(onRig));
        }
        return ExitCode.FINE;
    }

    /** What has changed since the last calibration, and where this one is kept. */
    private List<String> onRig(RigCalibrations rig, TestedOutput tested, Result result) {
        if (result.failure().isEmpty()) {
            return check ? rig.changes(tested, result.values()) : rig.keep(tested, result.proven(), result.values());
        }
        if (!check) {
            rig.failed(tested, result.failure().get());
        }
        return List.of();
    }

    private Result run(Setup setup, MeterOptions.Asked asked, LoopbackOptions.Asked cable, AudioOutput before, Path plot) {
        try {
            return meter
                    ? new MeterSession(surroundings, setup, asked, before).run()
                    : new LoopbackSession(surroundings, setup, cable, before).run(plot);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw Refused.setup("the calibration was interrupted", "no calibration was kept", e);
        }
    }

    private void tell(Result result, List<String> onRig, Setup setup, Path plot, Path file) {
        json.print(surroundings, result::json, () -> drawnIn(result.lines(), Optional.ofNullable(plot)));
        onRig.forEach(setup.talk()::println);
        if (result.failure().isPresent()) {
            throw Refused.setup(result.failure().get(), "");
        }
        if (file != null) {
            Json.writeOrRefuse(result.json(), file);
        }
    }

    private Optional<Device> output(Optional<RigCalibrations> rig, Arguments given) {
        if (deviceName == null) {
            return rig.flatMap(RigCalibrations::device).or(() -> Devices.outputs().stream().findFirst());
        }
        try {
            return Optional.of(Devices.output(deviceName));
        } catch (Refused e) {
            given.add(Location.named("--device"), e);
            return Optional.empty();
        }
    }

    private DeviceChoice choice(Device device, int channels, int rateHz) {
        return Devices.choose(device, channels, rate == null ? OptionalInt.empty() : OptionalInt.of(rateHz));
    }
}
