package understudy.audio;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Notices when a sound server moves what we play to another output, which it does without a word when a device is
 * unplugged: the signal would then come out of the wrong socket. Asks {@code pactl} once a second; where that is
 * missing, or the line goes past the server, it notices nothing.
 */
final class RouteWatch implements Runnable {

    private static final long PERIOD_MILLIS = 1000;
    private static final Pattern SINK = Pattern.compile("(?m)^\\s*Sink: (\\d+)$");

    private final Runnable moved;
    private volatile boolean done;

    /** @param moved called once, on the watching thread, when the output has changed */
    RouteWatch(Runnable moved) {
        this.moved = moved;
    }

    /** Ends {@link #run} within a second or so. */
    void end() {
        done = true;
    }

    @Override
    public void run() {
        Optional<String> first = Optional.empty();
        while (!done) {
            try {
                Optional<String> sinks = sinks(list(), ProcessHandle.current().pid());
                if (first.isPresent() && sinks.isPresent() && !sinks.equals(first)) {
                    moved.run();
                    return;
                }
                first = first.or(() -> sinks);
                Thread.sleep(PERIOD_MILLIS);
            } catch (IOException | UncheckedIOException e) {
                return; // No such command here: nothing to be seen.
            } catch (InterruptedException e) {
                return;
            }
        }
    }

    /** The sinks that streams of this process play to; empty when it has none. */
    static Optional<String> sinks(String listing, long pid) {
        String sinks = List.of(listing.split("(?m)^(?=Sink Input #)")).stream()
                .filter(stream -> stream.contains("application.process.id = \"" + pid + "\""))
                .map(SINK::matcher)
                .filter(Matcher::find)
                .map(matcher -> matcher.group(1))
                .distinct().sorted().collect(Collectors.joining(" "));
        return Optional.of(sinks).filter(s -> !s.isEmpty());
    }

    private static String list() throws IOException, InterruptedException {
        var builder = new ProcessBuilder("pactl", "list", "sink-inputs").redirectErrorStream(true);
        builder.environment().put("LC_ALL", "C");
        Process process = builder.start();
        process.getOutputStream().close();
        try (var reader = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            // A frozen server leaves pactl waiting; what it says about a dead one names no stream, and is no harm.
            return process.waitFor(2, TimeUnit.SECONDS) ? reader.lines().collect(Collectors.joining("\n")) : "";
        } finally {
            process.destroyForcibly();
        }
    }
}
