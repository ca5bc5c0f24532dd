package understudy.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicReference;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.audio.AudioException;
import understudy.audio.Destination;
import understudy.audio.Device;
import understudy.audio.DeviceChoice;
import understudy.audio.Devices;
import understudy.audio.Player;
import understudy.audio.PlayerEnd;
import understudy.audio.PlayerReport;
import understudy.audio.PlayerSettings;
import understudy.audio.Silent;
import understudy.audio.SoundFile;
import understudy.pattern.Pattern;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.store.DeviceIdentity;
import understudy.wave.Hand;
import understudy.wave.Renderer;

/** Plays a signal in real time. */
@Command(
        name = "play",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Plays a pattern's signal to an audio output.",
        footer = {
            "",
            "Examples:",
            "  understudy play crank-36-1-vr --speed \"800 rpm\"",
            "  understudy play crank-36-1-vr --device \"USB\" --for \"30 s\"",
            "  understudy play wheel-speed-44-vr --fault \"fault: dropout, length: 30 ms\"",
            "  understudy play crank-36-1-vr --to silent",
            "",
            "Keys while it plays: up and down change the speed, right and left change it a",
            "little, + and - the level, 1 to 9 switch faults, space stops."
        })
final class PlayCommand implements Callable<Integer> {

    private static final Range LENGTH = new Range(0.1, 1_000_000, Unit.SECOND);
    private static final Range LATENCY = new Range(0.005, 1, Unit.SECOND);

    private final Surroundings surroundings;

    @Mixin
    private HelpOption help;

    @Parameters(paramLabel = "PATTERN", description = "A pattern, by name or file.")
    private String patternName;

    @Mixin
    private SignalOptions options;

    @Option(names = "--for", paramLabel = "TIME", description = "Plays so long, like \"30 s\" (default: until stopped).")
    private String length;

    @Option(names = "--device", paramLabel = "NAME", description = "The audio output, or a part of its name (default: the system's).")
    private String deviceName;

    @Option(
            names = "--to",
            paramLabel = "PLACE",
            description = "silent: rehearses in real time; or a file ending in .wav. Nothing leaves the machine.")
    private String to;

    @Option(names = "--latency", paramLabel = "TIME", description = "How much is sent ahead, 5 ms to 1 s: a key acts so much later.")
    private String latency;

    @Option(names = "--yes", description = "Says yes to the cautions, for this time; for scripts.")
    private boolean yes;

    PlayCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        Given given = new Given();
        Playable asked = options.read(new Patterns().find(patternName), surroundings, given);
        PlayerSettings settings = settings(given);
        Optional<Device> device = device(asked.benches().device(), given);
        Optional<Path> file = file(given);
        given.refuse();

        Destination destination = destination(device, file, asked);
        Playable playable = asked.atRate(destination.rateHz());
        Optional<String> warning = SwingNote.judge(playable, given);
        given.refuse();
        surroundings.out().println(opening(destination));
        new Consent(surroundings, yes).ask(playable.pattern(), device.isPresent());
        surroundings.out().println(playable.voltsNote());
        Foresight.lines(playable).forEach(surroundings.out()::println);
        warning.ifPresent(surroundings.out()::println);
        PlayerReport report = play(playable, destination, settings);
        playable.benches().shortage().ifPresent(surroundings.out()::println);
        return report(report);
    }

    private PlayerSettings settings(Given given) {
        PlayerSettings settings = PlayerSettings.DEFAULT;
        if (latency != null) {
            settings = settings.withTargetFill(duration(given.quantity("--latency", latency, LATENCY, LATENCY.to())));
        }
        if (length != null) {
            settings = settings.withDuration(duration(given.quantity("--for", length, LENGTH, LENGTH.to())));
        }
        return settings;
    }

    private static Duration duration(double seconds) {
        return Duration.ofNanos(Math.round(seconds * 1e9));
    }

    /**
     * Empty where nothing leaves the machine.
     *
     * @param ofRig the device that the rig's volts hold for
     */
    private Optional<Device> device(Optional<DeviceIdentity> ofRig, Given given) {
        if (to != null && deviceName != null) {
            given.problem("--to", "it does not go together with --device", "leave one of them out");
            return Optional.empty();
        } else if (to != null) {
            return Optional.empty();
        } else if (ofRig.isPresent()) {
            return deviceOfRig(ofRig.get(), given);
        } else if (deviceName == null) {
            return Devices.outputs().stream().findFirst();
        }
        try {
            return Optional.of(Devices.output(deviceName));
        } catch (AudioException e) {
            given.problem("--device", e);
            return Optional.empty();
        }
    }

    private Optional<Device> deviceOfRig(DeviceIdentity ofRig, Given given) {
        Optional<Device> found = RigDevice.find(ofRig);
        if (found.isEmpty()) {
            given.problem("--rig", "its audio output " + RigDevice.label(ofRig) + " is not there",
                    "plug it in, or rehearse with --to silent");
        } else if (deviceName != null) {
            try {
                if (!RigDevice.identity(Devices.output(deviceName)).equals(ofRig)) {
                    given.problem("--device", "the rig's volts hold for its own audio output, " + RigDevice.label(ofRig),
                            "leave --device out, or make a rig for this one");
                }
            } catch (AudioException e) {
                given.problem("--device", e);
            }
        }
        return found;
    }

    /** Empty unless it goes into a file. */
    private Optional<Path> file(Given given) {
        return to == null || to.equals("silent")
                ? Optional.empty()
                : given.soundFile("--to", to, "give silent, or a name that ends in .wav");
    }

    private Destination destination(Optional<Device> device, Optional<Path> file, Playable playable) {
        int channels = playable.outputOfChannel().length;
        if (file.isPresent()) {
            return new SoundFile(file.get(), playable.rateHz(), channels);
        } else if (device.isEmpty()) {
            return new Silent(playable.rateHz(), channels);
        }
        OptionalInt rateHz = options.askedRateHz(playable);
        try {
            return Devices.choose(device.get(), channels, rateHz);
        } catch (AudioException e) {
            throw fewerChannels(device.get(), channels, rateHz).<RuntimeException>map(fewer -> new BadInput(
                    "--channels: \"" + device.get().label() + "\" opens with " + fewer + " channels, and " + channels
                            + " are asked for; name the outputs that you want, in channel order"))
                    .orElseGet(() -> Failed.because(e));
        }
    }

    /** How many the device opens with, if it is only that so many are too many. */
    private static Optional<Integer> fewerChannels(Device device, int channels, OptionalInt rateHz) {
        for (int fewer = channels - 1; fewer > 0; fewer--) {
            try {
                return Optional.of(Devices.choose(device, fewer, rateHz).channels()).filter(opened -> opened < channels);
            } catch (AudioException e) {
                // fewer still
            }
        }
        return Optional.empty();
    }

    private String opening(Destination destination) {
        if (destination instanceof DeviceChoice choice) {
            return "audio output \"" + choice.device().label() + "\", " + choice.rateHz() + " Hz, " + choice.format().bits()
                    + " bits, " + choice.channels() + " channels"
                    + (choice.listed() ? "" : "; the system may convert this on the way");
        } else if (destination instanceof SoundFile file) {
            return "playing into " + file.path() + ", in real time; nothing leaves the machine";
        }
        return (to == null ? "no audio output on this machine: " : "") + "rehearsing silently, in real time; nothing leaves the machine";
    }

    private PlayerReport play(Playable playable, Destination destination, PlayerSettings settings) {
        AtomicReference<Hand> hand = playable.hand();
        List<Renderer> renderers = new ArrayList<>();
        try {
            Player player = Player.open(
                    () -> {
                        renderers.add(playable.renderer(hand));
                        return playable.onChannels(renderers.get(renderers.size() - 1));
                    },
                    playable.scale(), destination, settings);
            Pattern pattern = playable.pattern();
            // the first is the one that plays; its twin only warmed up
            return new PlaySession(
                    surroundings, player, renderers.get(0), new LiveHand(pattern, hand), new StatusLine(pattern, destination.rateHz())).run();
        } catch (AudioException e) {
            throw Failed.because(e);
        }
    }

    private int report(PlayerReport report) {
        EndReport.lines(report).forEach(surroundings.out()::println);
        if (report.end() instanceof PlayerEnd.Lost lost) {
            throw new Failed(lost.reason());
        } else if (report.end() instanceof PlayerEnd.Fault fault) {
            throw new IllegalStateException("playing failed", fault.cause());
        }
        return Main.FINE;
    }
}
