package understudy.motion;

/**
 * A piece of motion with one law from an exact instant and angle on. Times are frames, angles turns. Mutable only so
 * that the audio thread can reuse it.
 *
 * <p>With s the frames since the start, f the speed at the start and phi the mean angle since the start:
 * <pre>
 *   hold    phi = f s
 *   ramp    phi = f s + a s^2 / 2
 *   sweep   phi = f (exp(k s) - 1) / k
 * </pre>
 * Cranking ripple of depth d, n times a turn, comes on top: angle = phi + d / (2 pi n) (1 - cos(2 pi n phi)), whose
 * speed is phi' (1 + d sin(2 pi n phi)).
 */
final class Piece {
    enum Law { HOLD, RAMP, SWEEP }

    private static final double TWO_PI = 2 * Math.PI;

    long startFrame;
    /** The start lies this part of a frame, 0 to below 1, after {@link #startFrame}. */
    double startFraction;
    double lengthFrames;
    long startTurn;
    double startTurnFraction;
    Law law;
    double startSpeed;
    /** a of a ramp in turns per frame squared, k of a sweep per frame; 0 for a hold. */
    double change;
    double rippleDepth;
    double ripplesPerTurn;

    /** Mean angle since the start, split by {@link #splitMeanAngle} so that long holds lose nothing. */
    long wholeMeanTurns;
    double meanFraction;

    /** Splits phi at {@code frame + offset} into {@link #wholeMeanTurns} and {@link #meanFraction} (0 to below 1). */
    void splitMeanAngle(long frame, double offset) {
        double wholeFrames = frame - startFrame;
        double rest = offset - startFraction;
        double product;
        double remainder;
        if (law == Law.HOLD) {
            product = startSpeed * wholeFrames;
            // what rounding took from the product, so that hour 24 is as exact as second 1
            remainder = Math.fma(startSpeed, wholeFrames, -product) + startSpeed * rest;
        } else {
            product = meanAngle(startSpeed, law, change, wholeFrames + rest);
            remainder = 0;
        }
        double whole = Math.floor(product);
        double fraction = (product - whole) + remainder;
        double carry = Math.floor(fraction);
        wholeMeanTurns = (long) whole + (long) carry;
        meanFraction = fraction - carry;
    }

    /** The ripple's own turn, 0 to below 1, at the angle last split. */
    double ripplePhase() {
        // an odd number of cylinders has half a ripple in every turn, so whole turns count in pairs
        double phase = ripplesPerTurn * (wholeMeanTurns % 2) + ripplesPerTurn * meanFraction;
        return phase - Math.floor(phase);
    }

    /** What the ripple adds to the mean angle last split, turns. */
    double rippleTurns() {
        return rippleDepth == 0
                ? 0
                : rippleDepth / (TWO_PI * ripplesPerTurn) * (1 - StrictMath.cos(TWO_PI * ripplePhase()));
    }

    /** The first whole frame at or before the end. */
    long endFrame() {
        return startFrame + (long) Math.floor(startFraction + lengthFrames);
    }

    /** How far after {@link #endFrame} the end lies, 0 to below 1. */
    double endFraction() {
        double end = startFraction + lengthFrames;
        return end - Math.floor(end);
    }

    /** Turns per frame at the end, ripple included. */
    double speedAtEnd() {
        double mean = meanSpeedAt(endFrame(), endFraction());
        if (rippleDepth == 0) {
            return mean;
        }
        splitMeanAngle(endFrame(), endFraction());
        return mean * (1 + rippleDepth * StrictMath.sin(TWO_PI * ripplePhase()));
    }

    /** phi' at {@code frame + offset}, turns per frame. */
    double meanSpeedAt(long frame, double offset) {
        double s = (frame - startFrame) + (offset - startFraction);
        return switch (law) {
            case HOLD -> startSpeed;
            case RAMP -> startSpeed + change * s;
            case SWEEP -> startSpeed * StrictMath.exp(change * s);
        };
    }

    /** Frames from {@code frame} to this piece's end. */
    double framesLeft(long frame) {
        return (startFrame - frame) + startFraction + lengthFrames;
    }

    /** phi after {@code s} frames of a law that starts at {@code speed}. */
    static double meanAngle(double speed, Law law, double change, double s) {
        return switch (law) {
            case HOLD -> speed * s;
            case RAMP -> s * (speed + 0.5 * change * s);
            case SWEEP -> change == 0 ? speed * s : speed * StrictMath.expm1(change * s) / change;
        };
    }

    /** The inverse of {@link #meanAngle}: frames until phi is {@code turns}. */
    static double framesTo(double speed, Law law, double change, double turns) {
        return switch (law) {
            case HOLD -> turns / speed;
            // the form of the quadratic's root that loses nothing when the ramp is slight
            case RAMP -> 2 * turns / (speed + Math.sqrt(Math.max(0, speed * speed + 2 * change * turns)));
            case SWEEP -> change == 0 ? turns / speed : StrictMath.log1p(change * turns / speed) / change;
        };
    }
}
