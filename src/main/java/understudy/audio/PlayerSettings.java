package understudy.audio;

import java.time.Duration;
import java.util.Optional;

/**
 * How to play.
 *
 * @param targetFill how much to keep queued at the device: what a change has to wait before it is heard; 5 ms to 1 s.
 *                   Empty: {@link #DEFAULT_TARGET_FILL}
 * @param duration   how long, fades included; empty: until stopped
 */
public record PlayerSettings(Optional<Duration> targetFill, Optional<Duration> duration) {

    /**
     * 80 ms. Beside one busy program on two cores it played ten minutes without a gap; with 40 ms it ran dry about once
     * a minute on a machine with five programs at once, where even 80 ms did so a few times. A hand on a key does not
     * notice the difference.
     */
    public static final Duration DEFAULT_TARGET_FILL = Duration.ofMillis(80);

    public static final Duration LEAST_TARGET_FILL = Duration.ofMillis(5);
    public static final Duration MOST_TARGET_FILL = Duration.ofSeconds(1);

    public static final PlayerSettings DEFAULT = new PlayerSettings(Optional.empty(), Optional.empty());

    public PlayerSettings {
        targetFill.ifPresent(fill -> {
            if (fill.compareTo(LEAST_TARGET_FILL) < 0 || fill.compareTo(MOST_TARGET_FILL) > 0) {
                throw new IllegalArgumentException("the latency must be 5 ms to 1000 ms, got " + fill.toMillis() + " ms");
            }
        });
        duration.ifPresent(length -> {
            if (length.isNegative() || length.isZero()) {
                throw new IllegalArgumentException("the time to play must be above 0 s, got " + length.toMillis() / 1e3 + " s");
            }
        });
    }

    public PlayerSettings withTargetFill(Duration fill) {
        return new PlayerSettings(Optional.of(fill), duration);
    }

    public PlayerSettings withDuration(Duration length) {
        return new PlayerSettings(targetFill, Optional.of(length));
    }
}
