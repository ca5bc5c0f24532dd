package understudy.motion;

/**
 * Part of the window with one law, told from where it begins in the window, so that all its numbers are small and
 * nothing is lost to rounding. Frames count from the window's start, turns from its base turn.
 */
final class Stretch {
    private static final double TWO_PI = 2 * Math.PI;
    /** Newton's method doubles its digits each time; from within a ripple it has all of them well before this. */
    private static final int MOST_STEPS = 40;

    double from;
    double to;
    Piece.Law law;
    double speed;
    double change;
    /** Mean angle at {@link #from}. */
    double meanTurns;
    double rippleDepth;
    double ripplesPerTurn;
    /** Turns of the ripple at {@link #from}. */
    double ripplePhase;

    double turnsAt(double frame) {
        double mean = Piece.meanAngle(speed, law, change, frame - from);
        return rippleDepth == 0 ? meanTurns + mean : meanTurns + mean + ripple(mean);
    }

    /** Angle and speed at the frames {@code begin .. end - 1}. */
    void fill(double[] turns, double[] speeds, int begin, int end) {
        if (law == Piece.Law.HOLD && rippleDepth == 0) {
            for (int i = begin; i < end; i++) {
                turns[i] = meanTurns + speed * (i - from);
                speeds[i] = speed;
            }
            return;
        }
        for (int i = begin; i < end; i++) {
            turns[i] = turnsAt(i);
            speeds[i] = speedAt(i);
        }
    }

    double startTurns() {
        return rippleDepth == 0 ? meanTurns : meanTurns + ripple(0);
    }

    double speedAt(double frame) {
        double s = frame - from;
        double mean = switch (law) {
            case HOLD -> speed;
            case RAMP -> speed + change * s;
            case SWEEP -> speed * StrictMath.exp(change * s);
        };
        if (rippleDepth == 0) {
            return mean;
        }
        double phase = ripplePhase + ripplesPerTurn * Piece.meanAngle(speed, law, change, s);
        return mean * (1 + rippleDepth * StrictMath.sin(TWO_PI * phase));
    }

    double frameAt(double turns) {
        double past = turns - meanTurns;
        double mean = rippleDepth == 0 ? past : meanOf(past);
        return from + Piece.framesTo(speed, law, change, mean);
    }

    private double ripple(double mean) {
        return rippleDepth / (TWO_PI * ripplesPerTurn)
                * (1 - StrictMath.cos(TWO_PI * (ripplePhase + ripplesPerTurn * mean)));
    }

    /** Mean angle at which mean plus ripple is {@code past}: Newton, kept inside what the ripple can be. */
    private double meanOf(double past) {
        double high = past;
        double low = past - rippleDepth / (Math.PI * ripplesPerTurn);
        double mean = past - ripple(past);
        for (int i = 0; i < MOST_STEPS; i++) {
            double miss = mean + ripple(mean) - past;
            if (miss > 0) {
                high = mean;
            } else {
                low = mean;
            }
            double slope = 1 + rippleDepth * StrictMath.sin(TWO_PI * (ripplePhase + ripplesPerTurn * mean));
            double next = mean - miss / slope;
            if (next == mean || next == low || next == high) {
                return next;
            }
            mean = next > low && next < high ? next : 0.5 * (low + high);
        }
        return mean;
    }
}
