package understudy.pattern;

import java.util.List;

/**
 * Speed over time. Speeds are turns per second, times seconds. After the last step the speed stays where it is.
 */
public record Profile(List<Step> steps) {

    public Profile {
        steps = List.copyOf(steps);
        if (steps.isEmpty()) {
            throw new IllegalArgumentException("a profile needs at least one step");
        }
    }

    /** The highest speed that will surely be played, turns per second, from {@code startHz} on. */
    public double fastestHz(double startHz) {
        return fastestHz(steps, startHz);
    }

    private static double fastestHz(List<Step> steps, double startHz) {
        return steps.stream().mapToDouble(step -> fastestHz(step, startHz)).max().orElse(startHz);
    }

    private static double fastestHz(Step step, double startHz) {
        if (step instanceof Hold hold) {
            return hold.hz();
        } else if (step instanceof Ramp ramp) {
            return Math.max(Double.isNaN(ramp.fromHz()) ? startHz : ramp.fromHz(), ramp.toHz());
        } else if (step instanceof Sweep sweep) {
            return Math.max(Double.isNaN(sweep.fromHz()) ? startHz : sweep.fromHz(), sweep.toHz());
        } else if (step instanceof Crank crank) {
            return crank.hz() * (1 + crank.ripple());
        } else if (step instanceof Repeat repeat) {
            return fastestHz(repeat.steps(), startHz);
        }
        return startHz;
    }

    /** Seconds until the last step ends; infinite when it repeats for ever. */
    public double seconds() {
        return seconds(steps);
    }

    private static double seconds(List<Step> steps) {
        return steps.stream().mapToDouble(Step::seconds).sum();
    }

    public sealed interface Step permits Hold, Ramp, Sweep, Crank, Repeat, Follow {

        /** How long it takes; infinite when it repeats for ever. */
        double seconds();
    }

    /** One speed for a time. */
    public record Hold(double hz, double seconds) implements Step {}

    /** A linear change; {@code fromHz} is NaN where it starts at whatever speed there is. */
    public record Ramp(double fromHz, double toHz, double seconds) implements Step {}

    /** An exponential change (equal ratios in equal times), both speeds above zero; {@code fromHz} may be NaN. */
    public record Sweep(double fromHz, double toHz, double seconds) implements Step {}

    /**
     * Cranking: the starter turns the engine, and every compression slows it down. The speed at the mean angle a is
     * {@code hz * (1 + ripple * sin(2 pi (cylinders / 2) a))}: one swing a compression of a four-stroke engine.
     *
     * @param hz        mean speed
     * @param seconds   how long
     * @param cylinders of a four-stroke engine
     * @param ripple    0 to below 1, part of the mean speed by which it swings up and down
     */
    public record Crank(double hz, double seconds, int cylinders, double ripple) implements Step {}

    /** Its steps again and again; {@code times} is {@link #FOREVER} or a count above zero. */
    public record Repeat(int times, List<Step> steps) implements Step {
        public static final int FOREVER = -1;

        public Repeat {
            steps = List.copyOf(steps);
        }

        @Override
        public double seconds() {
            return times == FOREVER ? Double.POSITIVE_INFINITY : times * Profile.seconds(steps);
        }
    }

    /** From here on the speed follows the user's hand; only as the last step. */
    public record Follow() implements Step {

        /** No time of its own. */
        @Override
        public double seconds() {
            return 0;
        }
    }
}
