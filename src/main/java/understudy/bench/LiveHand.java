package understudy.bench;

import java.util.concurrent.atomic.AtomicReference;
import understudy.pattern.Pattern;
import understudy.pattern.Speed;
import understudy.wave.Hand;

/**
 * What the user's hand has asked for so far, while a signal plays. Owned by one thread; only the reference, which the
 * renderer reads, is shared.
 */
public final class LiveHand {

    private static final double LEVEL_STEP = 0.05;

    private final Pattern pattern;
    private final SpeedSteps steps;
    private final AtomicReference<Hand> hand;

    public LiveHand(Pattern pattern, AtomicReference<Hand> hand) {
        this.pattern = pattern;
        this.steps = new SpeedSteps(pattern.speed());
        this.hand = hand;
    }

    public Pattern pattern() {
        return pattern;
    }

    public Hand now() {
        return hand.get();
    }

    /**
     * The next round speed above.
     *
     * @param nowHz turns per second that play at this moment, for a hand that takes over from a profile
     */
    public void faster(double nowHz, boolean fine) {
        hand.set(now().withSpeedHz(steps.faster(wishedHz(nowHz), fine)));
    }

    public void slower(double nowHz, boolean fine) {
        hand.set(now().withSpeedHz(steps.slower(wishedHz(nowHz), fine)));
    }

    /** Once the hand has spoken its own wish counts: the speed that plays still creeps up on it. */
    private double wishedHz(double nowHz) {
        return Double.isNaN(now().speedHz()) ? nowHz : now().speedHz();
    }

    /** A speed in the words of {@link Speed#parseHz}, with its unit or as a bare number in the pattern's own. */
    public void speed(String written) {
        hand.set(now().withSpeedHz(pattern.speed().typedHz(written)));
    }

    public void louder() {
        hand.set(now().withLevel(stepped(1)));
    }

    public void quieter() {
        hand.set(now().withLevel(stepped(-1)));
    }

    /** Counted in whole steps, so that ten down and ten up end where they began. */
    private double stepped(int by) {
        long steps = Math.round(now().level() / LEVEL_STEP) + by;
        return Math.max(0, Math.min(1, steps * LEVEL_STEP));
    }

    /** Switches a fault of the pattern by its index; other indices do nothing. */
    public void toggleFault(int index) {
        if (index >= 0 && index < pattern.faults().size()) {
            boolean on = (now().faultsOn() >> index & 1) == 1;
            hand.set(now().withFault(index, !on));
        }
    }
}
