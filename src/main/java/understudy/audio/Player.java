package understudy.audio;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.sound.sampled.LineUnavailableException;
import understudy.refusal.Refused;
import understudy.rig.OutputScale;
import understudy.wave.VoltSource;

/**
 * Plays a source's volts in real time, to a device or in silence. Whatever happens, it ends in silence, says why, and
 * does not hang.
 *
 * <p>Any thread may call it. Threads: a writer owns the line; a watchdog sees when the writer makes no progress; a
 * closer, started at the end, may be lost to a frozen sound server. All are daemons.
 */
public final class Player implements AutoCloseable {

    private static final Duration STALLED_AFTER = Duration.ofSeconds(1);
    private static final Duration LOST_AFTER = Duration.ofSeconds(3);
    private static final long WATCH_MILLIS = 50;

    private final OutputLine line;
    private final OutputStage stage;
    private final LineWriter writer;
    private final Destination destination;
    private final int targetStartFrames;
    private final AtomicReference<PlayerEnd> decided = new AtomicReference<>();
    private final CompletableFuture<PlayerReport> ended = new CompletableFuture<>();
    private final RouteWatch route = new RouteWatch(() -> end(new PlayerEnd.Lost(
            lost("the sound system moved the signal to another output"))));
    private final AtomicBoolean started = new AtomicBoolean();
    private volatile boolean stalled;
    private volatile int stalls;

    Player(VoltSource source, OutputScale scale, Destination destination, OutputLine line, PlayerSettings settings) {
        this.line = line;
        this.destination = destination;
        this.stage = stageFor(source, scale, destination);
        int rateHz = source.rateHz();
        this.writer = new LineWriter(
                source, stage, line, Clock.SYSTEM,
                (int) frames(settings.targetFill().orElse(PlayerSettings.DEFAULT_TARGET_FILL), rateHz),
                settings.duration().map(d -> frames(d, rateHz)).orElse(Long.MAX_VALUE));
        this.targetStartFrames = writer.targetFrames();
    }

    /**
     * Opens the destination, ready to {@link #start}; takes a moment, for it first goes through three seconds of the
     * signal so that nothing has to be compiled or loaded while it plays.
     *
     * @param source    what plays; has the destination's rate and at most its channels
     * @param rehearsal a twin of it, to warm up with
     * @throws Refused when the device does not open
     */
    public static Player open(
            VoltSource source, VoltSource rehearsal, OutputScale scale, Destination destination, PlayerSettings settings) {
        if (source.rateHz() != destination.rateHz() || source.channels() > destination.channels()) {
            throw new IllegalArgumentException("a source of " + source.channels() + " channels at " + source.rateHz()
                    + " Hz for " + destination);
        }
        WarmUp.run(rehearsal, scale, destination);
        return new Player(source, scale, destination, openLine(destination, settings), settings);
    }

    private static OutputLine openLine(Destination destination, PlayerSettings settings) {
        Duration target = settings.targetFill().orElse(PlayerSettings.DEFAULT_TARGET_FILL);
        int capacityFrames = (int) frames(Devices.bufferFor(target), destination.rateHz());
        if (destination instanceof DeviceChoice choice) {
            try {
                return new DeviceLine(Devices.open(choice, capacityFrames));
            } catch (LineUnavailableException | IllegalArgumentException e) {
                throw Refused.setup("audio output \"" + choice.device().label() + "\" does not open"
                        + Devices.reasonAfterColon(e), "close other programs that use it, then try again", e);
            }
        }
        var silent = new SilentLine(
                destination.rateHz(), destination.channels() * sampleFormat(destination).bytes(), capacityFrames, Clock.SYSTEM);
        return destination instanceof SoundFile file
                ? new FileLine(silent, WavWriter.create(file.path(), file.channels(), file.rateHz(), sampleFormat(file)))
                : silent;
    }

    static OutputStage stageFor(VoltSource source, OutputScale scale, Destination destination) {
        boolean bigEndian = destination instanceof DeviceChoice choice && choice.bigEndian();
        return new OutputStage(scale, source.channels(), destination.channels(), sampleFormat(destination), bigEndian,
                source.rateHz(), false);
    }

    static SampleFormat sampleFormat(Destination destination) {
        return destination instanceof DeviceChoice choice ? choice.format() : SampleFormat.PCM24;
    }

    /** Begins to play, faded in. Once only. */
    public void start() {
        if (!started.compareAndSet(false, true)) {
            throw new IllegalStateException("a player plays once");
        }
        // Windows and macOS heed it; Linux does only for those whom it grants priorities.
        daemon("audio-writer", this::write, Thread.MAX_PRIORITY);
        daemon("audio-watchdog", this::watch, Thread.NORM_PRIORITY);
        if (destination instanceof DeviceChoice) {
            daemon("audio-route", route, Thread.NORM_PRIORITY);
        }
    }

    /** Fades out and ends; returns at once. */
    public void stop() {
        writer.stop();
        if (started.compareAndSet(false, true)) {
            end(new PlayerEnd.Stopped());
        }
    }

    /** Stops and waits; the line is closed or given up when this returns. */
    @Override
    public void close() {
        stop();
        try {
            awaitEnd(LOST_AFTER.plus(line.patience()).plusSeconds(1));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Waits until it has ended and the line is closed. */
    public PlayerReport awaitEnd() throws InterruptedException {
        try {
            return ended.get();
        } catch (ExecutionException e) {
            throw new IllegalStateException(e);
        }
    }

    /** As {@link #awaitEnd()}, but for so long at most; empty when it still plays. */
    public Optional<PlayerReport> awaitEnd(Duration longest) throws InterruptedException {
        try {
            return Optional.of(ended.get(longest.toMillis(), TimeUnit.MILLISECONDS));
        } catch (TimeoutException e) {
            return Optional.empty();
        } catch (ExecutionException e) {
            throw new IllegalStateException(e);
        }
    }

    /** How it stands. */
    public PlayerStatus status() {
        return new PlayerStatus(state(), writer.playedFrames(), seconds(writer.playedFrames()), writer.gaps().count(),
                millis(writer.queuedFrames()), millis(writer.targetFrames()), writer.recentPeak(), writer.clippedSamples());
    }

    private PlayerStatus.State state() {
        return ended.isDone() ? PlayerStatus.State.ENDED
                : writer.stopWasAsked() ? PlayerStatus.State.STOPPING
                : stalled ? PlayerStatus.State.STALLED
                : started.get() ? PlayerStatus.State.PLAYING
                : PlayerStatus.State.READY;
    }

    private void write() {
        PlayerEnd end;
        try {
            writer.run();
            end = writer.fault() != null ? new PlayerEnd.Fault(writer.fault())
                    : stage.tripped() ? new PlayerEnd.Fault(notANumber())
                    : writer.stopWasAsked() ? new PlayerEnd.Stopped()
                    : new PlayerEnd.Finished();
        } catch (LineWriter.LineFailed e) {
            end = new PlayerEnd.Lost(lost(e.getMessage()));
        } catch (Throwable e) {
            end = new PlayerEnd.Fault(e);
        }
        end(end);
    }

    private ArithmeticException notANumber() {
        return new ArithmeticException("the signal is not a number at frame " + stage.trippedAtFrame());
    }

    private void watch() {
        while (decided.get() == null) {
            long idleNanos = System.nanoTime() - writer.progressNanos();
            if (idleNanos > LOST_AFTER.toNanos()) {
                end(writer.phase() == LineWriter.Phase.RENDERING
                        ? new PlayerEnd.Fault(new IllegalStateException("the signal took more than 3 s to compute"))
                        : new PlayerEnd.Lost(lost("it took no samples for 3 s")));
            }
            boolean now = idleNanos > STALLED_AFTER.toNanos();
            if (now && !stalled) {
                stalls++;
            }
            stalled = now;
            Clock.SYSTEM.pause(TimeUnit.MILLISECONDS.toNanos(WATCH_MILLIS));
        }
    }

    private String lost(String seen) {
        String what = destination instanceof DeviceChoice choice
                ? "audio output \"" + choice.device().label() + "\"" : "the silent line";
        return what + " is lost: " + seen
                + "; it was unplugged, or the sound system stopped: check the plug, then start again";
    }

    /** The first to call decides; the line is closed or given up, and then everybody is told. */
    private void end(PlayerEnd end) {
        if (!decided.compareAndSet(null, end)) {
            return;
        }
        writer.abandon();
        route.end();
        String hardware = destination instanceof DeviceChoice choice
                ? HardwareFormat.of(choice.device(), HardwareFormat.ASOUND).orElse("") : "";
        boolean closed = LineCloser.close(() -> {
            line.stop();
            line.flush();
            line.close();
        }, line.patience());
        PlayerEnd told = line.failure().<PlayerEnd>map(PlayerEnd.Lost::new).orElse(end);
        ended.complete(report(told, hardware, !closed));
    }

    private PlayerReport report(PlayerEnd end, String hardware, boolean leftOpen) {
        GapWatch gaps = writer.gaps();
        List<Underrun> underruns = IntStream.range(0, Math.min(gaps.count(), GapWatch.KEPT))
                .mapToObj(gaps::underrun).collect(Collectors.toList());
        String system = System.getProperty("os.name") + " " + System.getProperty("os.version") + ", Java "
                + System.getProperty("java.version");
        return new PlayerReport(end, destination, hardware, seconds(writer.playedFrames()), writer.playedFrames(), gaps.count(),
                underruns, gaps.longestMillis(), stalls, millis(targetStartFrames), millis(writer.targetFrames()),
                millis(line.capacityFrames()), writer.clippedSamples(), writer.peak(), leftOpen, system);
    }

    private double seconds(long frames) {
        return (double) frames / destination.rateHz();
    }

    private double millis(long frames) {
        return 1e3 * frames / destination.rateHz();
    }

    private static long frames(Duration duration, int rateHz) {
        return duration.toSeconds() * rateHz + Math.round(duration.toNanosPart() * 1e-9 * rateHz);
    }

    private static void daemon(String name, Runnable work, int priority) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.setPriority(priority);
        thread.start();
    }
}
