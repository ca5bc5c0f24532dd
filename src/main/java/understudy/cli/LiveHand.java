package understudy.cli;

import java.util.concurrent.atomic.AtomicReference;
import understudy.pattern.Pattern;
import understudy.wave.Hand;

/**
 * What the user's keys have asked for so far. Owned by the thread that reads the keys; only the reference, which the
 * renderer reads, is shared.
 */
final class LiveHand {

    private static final double LEVEL_STEP = 0.05;

    private final Pattern pattern;
    private final SpeedSteps steps;
    private final AtomicReference<Hand> hand;

    LiveHand(Pattern pattern, AtomicReference<Hand> hand) {
        this.pattern = pattern;
        this.steps = new SpeedSteps(pattern.speed());
        this.hand = hand;
    }

    /**
     * Carries out one key.
     *
     * @param nowHz turns per second that play at this moment, for the first key that takes over from a profile
     * @return false when the key asks to stop
     */
    boolean press(int key, double nowHz) {
        Hand now = hand.get();
        // once the hand has spoken its own wish counts: the speed that plays still creeps up on it
        double speedHz = Double.isNaN(now.speedHz()) ? nowHz : now.speedHz();
        switch (key) {
            case Keys.UP -> hand.set(now.withSpeedHz(steps.faster(speedHz, false)));
            case Keys.DOWN -> hand.set(now.withSpeedHz(steps.slower(speedHz, false)));
            case Keys.RIGHT -> hand.set(now.withSpeedHz(steps.faster(speedHz, true)));
            case Keys.LEFT -> hand.set(now.withSpeedHz(steps.slower(speedHz, true)));
            case '+', '=' -> hand.set(now.withLevel(stepped(now.level(), 1)));
            case '-', '_' -> hand.set(now.withLevel(stepped(now.level(), -1)));
            case ' ', 'q', 'Q', Keys.END_OF_INPUT -> {
                return false;
            }
            default -> toggleFault(key - '1');
        }
        return true;
    }

    Hand now() {
        return hand.get();
    }

    private void toggleFault(int index) {
        if (index >= 0 && index < Math.min(9, pattern.faults().size())) {
            boolean on = (hand.get().faultsOn() >> index & 1) == 1;
            hand.set(hand.get().withFault(index, !on));
        }
    }

    /** Counted in whole steps, so that ten down and ten up end where they began. */
    private static double stepped(double level, int by) {
        long steps = Math.round(level / LEVEL_STEP) + by;
        return Math.max(0, Math.min(1, steps * LEVEL_STEP));
    }
}
