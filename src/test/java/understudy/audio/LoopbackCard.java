package understudy.audio;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import understudy.rig.OutputScale;
import understudy.wave.VoltSource;

/**
 * A virtual sound card: what is played comes back at its input. Every instance is a sound server of its own, so that a
 * test may kill, freeze or starve it. One at a time; scripts/test lays the ground.
 */
public final class LoopbackCard implements AutoCloseable {

    /** For tests that are not about latency: a machine busy with other builds holds a thread up for 100 ms at times. */
    public static final Duration BUSY_FILL = Duration.ofMillis(300);

    /** Where the sound library puts six channels; a server moves channels about to suit the places it has. */
    private static final String SIX = "front-left,front-right,rear-left,rear-right,front-center,lfe";

    private final Path root;
    private final Path home;
    private final Process server;
    private final List<Process> helpers = new ArrayList<>();

    private LoopbackCard(Path root, Path home, Process server) {
        this.root = root;
        this.home = home;
        this.server = server;
    }

    /** A card with one sink, "bench", 48 kHz, 2 channels, 32 bits. */
    public static LoopbackCard start() throws IOException, InterruptedException {
        return start(2);
    }

    static LoopbackCard start(int channels) throws IOException, InterruptedException {
        return start(channels, 48_000, "s32le");
    }

    /** A card of 24 bits: whatever has more is rounded on its way. */
    static LoopbackCard startWith24Bits() throws IOException, InterruptedException {
        return start(2, 48_000, "s24le");
    }

    /** A card that runs at a rate of its own: whatever else is played or recorded, the server converts. */
    public static LoopbackCard startAt(int rateHz) throws IOException, InterruptedException {
        LoopbackCard card = start(2, rateHz, "s32le");
        // an idle sink would change over to the rate of whoever comes next
        card.pipe(List.of("cat", "/dev/zero"), played("bench", rateHz));
        Thread.sleep(500);
        return card;
    }

    private static LoopbackCard start(int channels, int rateHz, String format) throws IOException, InterruptedException {
        String given = System.getenv("UNDERSTUDY_CARD");
        if (given == null) {
            throw new AssertionError("tests of real audio lines need the virtual sound card: run scripts/test");
        }
        Path root = Path.of(given);
        Path home = Files.createTempDirectory(root, "own");
        Files.writeString(home.resolve("card.pa"), String.join("\n",
                "load-module module-native-protocol-unix socket=" + home + "/native auth-anonymous=1",
                "load-module module-null-sink sink_name=bench rate=" + rateHz + " channels=" + channels
                        + (channels == 6 ? " channel_map=" + SIX : "") + " format=" + format + " norewinds=1",
                "set-default-sink bench",
                "set-default-source bench.monitor",
                ""));
        var builder = new ProcessBuilder("pulseaudio", "-n", "-F", home + "/card.pa", "--exit-idle-time=-1",
                "--daemonize=no", "--use-pid-file=no");
        for (String variable : List.of("HOME", "XDG_RUNTIME_DIR", "PULSE_RUNTIME_PATH", "PULSE_STATE_PATH")) {
            builder.environment().put(variable, home.toString());
        }
        Process server = builder.redirectErrorStream(true).redirectOutput(home.resolve("log").toFile()).start();
        // Should this program be ended at once, the script that laid the ground ends the server.
        Files.writeString(home.resolve("pid"), Long.toString(server.pid()));
        var card = new LoopbackCard(root, home, server);
        card.await(Duration.ofSeconds(10));
        pointLineAt(root, home);
        return card;
    }

    private void await(Duration longest) throws IOException, InterruptedException {
        long end = System.nanoTime() + longest.toNanos();
        while (control("info") != 0) {
            if (System.nanoTime() > end || !server.isAlive()) {
                throw new AssertionError("the virtual sound card did not start: " + Files.readString(home.resolve("log")));
            }
            Thread.sleep(20);
        }
    }

    /** The sound library finds the server through this link. */
    private static void pointLineAt(Path root, Path home) throws IOException {
        Path fresh = root.resolve("line.new");
        Files.createSymbolicLink(fresh, home.getFileName());
        Files.move(fresh, root.resolve("line"), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    public Device output() {
        return Devices.outputs().get(0);
    }

    public Device input() {
        return Devices.inputs().get(0);
    }

    /** The card's output in the format that a player would choose. */
    public DeviceChoice choice(int channels) {
        return Devices.choose(output(), channels, OptionalInt.of(48000));
    }

    /**
     * Plays and records at once.
     *
     * @param sources asked for what plays and for a twin to warm up with; 48 kHz
     * @return what came back, fractions of full scale, one array a channel, cut to where sound begins and ends
     */
    public double[][] hear(Supplier<VoltSource> sources, OutputScale scale, PlayerSettings settings)
            throws IOException, InterruptedException {
        return hear(sources, scale, choice(sources.get().channels()), settings);
    }

    double[][] hear(Supplier<VoltSource> sources, OutputScale scale, DeviceChoice choice, PlayerSettings settings)
            throws IOException, InterruptedException {
        try (Recorder recorder = Recorder.toMemory(input(), 48000, choice.channels());
                Player player = Player.open(sources.get(), sources.get(), scale, choice, settings)) {
            recorder.start();
            while (recorder.frames() == 0) {
                Thread.sleep(5); // The server takes its time to connect it.
            }
            player.start();
            PlayerReport report = player.awaitEnd();
            Thread.sleep(200); // The server holds back at most 50 ms.
            if (!(report.end() instanceof PlayerEnd.Finished) || report.underrunCount() > 0) {
                throw new AssertionError("not played to its end without a gap: " + report);
            }
            return trimmed(recorder.stop().samples());
        }
    }

    private static double[][] trimmed(double[][] samples) {
        int first = Integer.MAX_VALUE;
        int last = 0;
        for (double[] channel : samples) {
            for (int i = 0; i < channel.length; i++) {
                if (channel[i] != 0) {
                    first = Math.min(first, i);
                    last = Math.max(last, i + 1);
                }
            }
        }
        int from = Math.min(first, last);
        int to = last;
        return Arrays.stream(samples).map(c -> Arrays.copyOfRange(c, from, to)).toArray(double[][]::new);
    }

    /** What is recorded from now on comes from elsewhere, where nothing is played. */
    public void unplug() throws IOException, InterruptedException {
        addSink("elsewhere");
        expect(control("set-default-source", "elsewhere.monitor"));
    }

    /** The system's volumes, in per cent; above 100 it cuts off what has no room. */
    public void volumes(int outputPercent, int inputPercent) throws IOException, InterruptedException {
        expect(control("set-sink-volume", "bench", "0x" + Long.toHexString(volume(outputPercent))));
        expect(control("set-source-volume", "bench.monitor", "0x" + Long.toHexString(volume(inputPercent))));
    }

    /** The server's own scale of volumes: the cube of it is the amplitude, 0x10000 is all of it. */
    private static long volume(int percent) {
        return Math.round(0x10000 * Math.cbrt(percent / 100.0));
    }

    /** Another program plays a sine on both channels, until the card is closed. */
    public void mix(String sink, double hz, double peak) throws IOException {
        pipe(List.of("sox", "-q", "-D", "-n", "-t", "raw", "-r", "48000", "-e", "signed", "-b", "32", "-c", "2", "-", "synth", "60", "sine",
                Double.toString(hz), "vol", Double.toString(peak)), played(sink, 48_000));
    }

    /** What is recorded from now on is what is played, sent through these effects of sox. */
    public void through(String... effects) throws IOException, InterruptedException {
        addSink("far");
        expect(control("set-default-source", "far.monitor"));
        List<String> sox = new ArrayList<>(List.of("sox", "-q", "-D", "--buffer", "2048", "-t", "raw", "-r", "48000", "-e", "float", "-b", "32", "-c", "2",
                "-", "-t", "raw", "-r", "48000", "-e", "signed", "-b", "32", "-"));
        sox.addAll(List.of(effects));
        pipe(List.of("parec", "--raw", "-d", "bench.monitor", "--rate=48000", "--channels=2", "--format=float32le",
                "--latency-msec=20"), sox, played("far", 48_000));
    }

    private static List<String> played(String sink, int rateHz) {
        // less than a recording goes on for when the program has ended
        return List.of("pacat", "--raw", "--verbose", "-d", sink, "--rate=" + rateHz, "--channels=2", "--format=s32le", "--latency-msec=450");
    }

    /** How often a helper had nothing to play: on a busy machine what it does to the sound may have gaps of its own. */
    public long helperGaps() throws IOException {
        Path log = home.resolve("helpers.log");
        return Files.exists(log) ? Files.readAllLines(log).stream().filter(line -> line.contains("underrun")).count() : 0;
    }

    @SafeVarargs
    private void pipe(List<String>... commands) throws IOException {
        List<ProcessBuilder> builders = new ArrayList<>();
        for (List<String> command : commands) {
            var builder = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.appendTo(home.resolve("helpers.log").toFile()));
            builder.environment().put("PULSE_SERVER", "unix:" + home + "/native");
            builders.add(builder);
        }
        builders.get(builders.size() - 1).redirectOutput(ProcessBuilder.Redirect.DISCARD);
        helpers.addAll(ProcessBuilder.startPipeline(builders));
    }

    void suspend(boolean suspended) throws IOException, InterruptedException {
        expect(control("suspend-sink", "bench", suspended ? "1" : "0"));
    }

    void unloadSink(String name) throws IOException, InterruptedException {
        expect(control("list", "short", "modules"));
        String module = Files.readAllLines(home.resolve("pactl.log")).stream()
                .filter(line -> line.contains("sink_name=" + name + " ")).findFirst().orElseThrow();
        expect(control("unload-module", module.split("\t")[0]));
    }

    void addSink(String name) throws IOException, InterruptedException {
        expect(control("load-module", "module-null-sink", "sink_name=" + name, "rate=48000", "channels=2", "format=s32le", "norewinds=1"));
    }

    void freeze() throws IOException, InterruptedException {
        signal("-STOP");
    }

    void thaw() throws IOException, InterruptedException {
        signal("-CONT");
    }

    public void kill() {
        server.destroyForcibly();
    }

    private void signal(String name) throws IOException, InterruptedException {
        expect(new ProcessBuilder("kill", name, Long.toString(server.pid())).start().waitFor());
    }

    private int control(String... words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("pactl"));
        command.addAll(List.of(words));
        var builder = new ProcessBuilder(command);
        builder.environment().put("PULSE_SERVER", "unix:" + home + "/native");
        return builder.redirectErrorStream(true).redirectOutput(home.resolve("pactl.log").toFile()).start().waitFor();
    }

    private void expect(int code) throws IOException {
        if (code != 0) {
            throw new AssertionError("the card refused: " + Files.readString(home.resolve("pactl.log")));
        }
    }

    @Override
    public void close() throws IOException {
        helpers.forEach(Process::destroyForcibly);
        pointLineAt(root, Path.of("shared"));
        Files.delete(home.resolve("pid"));
        server.destroyForcibly().onExit().orTimeout(5, TimeUnit.SECONDS).join();
    }
}
