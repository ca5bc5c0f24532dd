package understudy.motion;

import understudy.pattern.Profile;

/**
 * The pieces of motion from now to as far as anyone has looked: what the profile says, until the hand takes over. Each
 * piece starts at the exact instant and angle at which the one before ends.
 */
final class Course {
    private final int rateHz;
    private ProfileProgram program;
    private final Piece[] pieces;
    private int count;
    /** What the hand asked for last, turns per frame; NaN while the profile rules. */
    private double handSpeed = Double.NaN;

    /** @param window frames that are looked at together */
    Course(Profile profile, double startHz, int rateHz, int window) {
        this.rateHz = rateHz;
        this.program = profile == null ? null : new ProfileProgram(profile);
        // those a window can hold, one that ends before it, one to append, and the two of a hand that takes over
        pieces = new Piece[4 + (int) Math.ceil(window / (Motion.SHORTEST_STEP_SECONDS * rateHz))];
        for (int i = 0; i < pieces.length; i++) {
            pieces[i] = new Piece();
        }
        count = 1;
        pieces[0].law = Piece.Law.HOLD;
        pieces[0].startSpeed = startHz / rateHz;
        pieces[0].lengthFrames = program == null ? Double.POSITIVE_INFINITY : 0;
    }

    int capacity() {
        return pieces.length;
    }

    int count() {
        return count;
    }

    Piece piece(int index) {
        return pieces[index];
    }

    /** Forgets the pieces that end before a frame. */
    void forgetBefore(long frame) {
        while (count > 1 && pieces[0].framesLeft(frame) <= 0) {
            Piece over = pieces[0];
            System.arraycopy(pieces, 1, pieces, 0, pieces.length - 1);
            pieces[pieces.length - 1] = over;
            count--;
        }
    }

    /** Appends pieces until they reach a frame. */
    void reach(long frame) {
        while (last().framesLeft(frame) < 0) {
            appendNext();
        }
    }

    /** The hand takes over: whatever was planned from {@code frame} on makes way for a ramp to its speed. */
    void takeOver(long frame, double speed) {
        handSpeed = speed;
        cut(frame);
        appendRamp(last().speedAtEnd(), speed, Motion.HAND_RAMP_SECONDS);
    }

    /** Likewise for the steps of a program; after the last the speed stays where it is. */
    void takeOver(long frame, ProfileProgram steps) {
        handSpeed = Double.NaN;
        program = steps;
        cut(frame);
    }

    private void cut(long frame) {
        while (count > 1 && last().startFrame >= frame) {
            count--;
        }
        if (last().framesLeft(frame) > 0) {
            // not by what is left: an endless hold less its endless rest is not a number
            last().lengthFrames = (frame - last().startFrame) - last().startFraction;
        }
    }

    private Piece last() {
        return pieces[count - 1];
    }

    private void appendNext() {
        double now = last().speedAtEnd();
        Profile.Step step = program == null || !Double.isNaN(handSpeed) ? null : program.next();
        if (step instanceof Profile.Hold hold) {
            append(Piece.Law.HOLD, hold.hz() / rateHz, 0, hold.seconds() * rateHz);
        } else if (step instanceof Profile.Ramp ramp) {
            double from = Double.isNaN(ramp.fromHz()) ? now : ramp.fromHz() / rateHz;
            appendRamp(from, ramp.toHz() / rateHz, ramp.seconds());
        } else if (step instanceof Profile.Sweep sweep) {
            double from = Double.isNaN(sweep.fromHz()) ? now : sweep.fromHz() / rateHz;
            double frames = sweep.seconds() * rateHz;
            append(Piece.Law.SWEEP, from, StrictMath.log(sweep.toHz() / rateHz / from) / frames, frames);
        } else if (step instanceof Profile.Crank crank) {
            Piece piece = append(Piece.Law.HOLD, crank.hz() / rateHz, 0, crank.seconds() * rateHz);
            piece.rippleDepth = crank.ripple();
            piece.ripplesPerTurn = crank.cylinders() / 2.0;
        } else {
            append(Piece.Law.HOLD, Double.isNaN(handSpeed) ? now : handSpeed, 0, Double.POSITIVE_INFINITY);
        }
    }

    private void appendRamp(double from, double to, double seconds) {
        double frames = seconds * rateHz;
        append(Piece.Law.RAMP, from, (to - from) / frames, frames);
    }

    private Piece append(Piece.Law law, double speed, double change, double lengthFrames) {
        Piece before = last();
        Piece next = pieces[count++];
        next.startFrame = before.endFrame();
        next.startFraction = before.endFraction();
        before.splitMeanAngle(next.startFrame, next.startFraction);
        double fraction = before.startTurnFraction + before.meanFraction + before.rippleTurns();
        double carry = Math.floor(fraction);
        next.startTurn = before.startTurn + before.wholeMeanTurns + (long) carry;
        next.startTurnFraction = fraction - carry;
        next.law = law;
        next.startSpeed = speed;
        next.change = change;
        next.lengthFrames = lengthFrames;
        next.rippleDepth = 0;
        next.ripplesPerTurn = 0;
        return next;
    }
}
