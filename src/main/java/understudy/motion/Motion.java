package understudy.motion;

import understudy.pattern.Profile;

/**
 * Speed over time, and its exact integral, the angle: time in frames, angles in turns, speeds in turns per frame.
 * Owned by one thread.
 *
 * <p>It advances by quanta of {@value #QUANTUM} frames and knows the window of two quanta that begins at the current
 * one: the quantum being rendered, and one more, so that edges still to come can be placed exactly. What the hand asks
 * for therefore acts from the quantum after these two on. Whole turns are counted as integers; in the window, angles
 * are told relative to {@link #baseTurn()}.
 *
 * <p>{@link #advance} MUST NOT allocate, lock, log or read a clock.
 */
public final class Motion {
    /** Frames rendered at a time. */
    public static final int QUANTUM = 64;

    private static final int WINDOW = 2 * QUANTUM;
    /** A live change of speed is a linear ramp of this length, so that the angle has no jump and no kink. */
    public static final double HAND_RAMP_SECONDS = 0.05;
    /** Shortest step of a profile that a pattern may have; it tells how many pieces a window can hold. */
    public static final double SHORTEST_STEP_SECONDS = 0.001;

    private static final double TWO_PI = 2 * Math.PI;

    private final int rateHz;
    private final ProfileProgram program;
    private final Piece[] pieces;
    private int pieceCount;
    private final Stretch[] stretches;
    private int stretchCount;

    private long windowStart = -QUANTUM;
    private boolean started;
    private double handSpeed = Double.NaN;
    private long baseTurn;

    private final double[] turns = new double[QUANTUM];
    private final double[] speeds = new double[QUANTUM];
    private boolean framesFilled;
    private double windowEndTurns;

    /**
     * @param profile speed over time, or null to hold {@code startHz} until the hand asks for another
     * @param startHz turns per second at the start
     */
    public Motion(Profile profile, double startHz, int rateHz) {
        this.rateHz = rateHz;
        this.program = profile == null ? null : new ProfileProgram(profile);
        // those the window can hold, one that ends before it, one to append, and the two of a hand that takes over
        int most = 4 + (int) Math.ceil(WINDOW / (SHORTEST_STEP_SECONDS * rateHz));
        pieces = new Piece[most];
        stretches = new Stretch[most];
        for (int i = 0; i < most; i++) {
            pieces[i] = new Piece();
            stretches[i] = new Stretch();
        }
        Piece first = pieces[0];
        pieceCount = 1;
        first.startTurn = 0;
        first.law = Piece.Law.HOLD;
        first.startSpeed = startHz / rateHz;
        first.lengthFrames = program == null ? Double.POSITIVE_INFINITY : 0;
    }

    /**
     * Moves on by one quantum.
     *
     * @param handHz turns per second that the hand asks for; NaN leaves the speed to the profile
     */
    public void advance(double handHz) {
        windowStart += QUANTUM;
        dropPiecesBefore(windowStart);
        long undecidedFrom = started ? windowStart + QUANTUM : windowStart;
        double asked = handHz / rateHz;
        if (!Double.isNaN(asked) && asked != handSpeed) {
            handSpeed = asked;
            takeOver(undecidedFrom);
        }
        while (pieces[pieceCount - 1].framesLeft(windowStart) < WINDOW) {
            appendNext();
        }
        started = true;
        layOut();
    }

    /** Frames before the current quantum. */
    public long startFrame() {
        return windowStart;
    }

    /** The whole turn that angles in the window are relative to. */
    public long baseTurn() {
        return baseTurn;
    }

    /** Angle at each frame of the quantum, turns above {@link #baseTurn()}; valid until the next advance. */
    public double[] turns() {
        fillFrames();
        return turns;
    }

    /** Speed at each frame of the quantum, turns per frame; valid until the next advance. */
    public double[] turnsPerFrame() {
        fillFrames();
        return speeds;
    }

    /** Angle at the end of the window, turns above {@link #baseTurn()}. */
    public double windowEndTurns() {
        return windowEndTurns;
    }

    /** Angle at the start of the window, turns above {@link #baseTurn()}. */
    public double windowStartTurns() {
        return stretches[0].turnsAt(0);
    }

    /**
     * When the window reaches an angle, in frames since its start. Angles before the window, which matter only at
     * the very start, are answered as if its first speed had always been; 0 speed there gives minus infinity.
     */
    public double frameAt(double turnsAboveBase) {
        int i = stretchCount - 1;
        while (i > 0 && turnsAboveBase < stretches[i].startTurns()) {
            i--;
        }
        Stretch stretch = stretches[i];
        if (turnsAboveBase < stretch.startTurns()) {
            double speed = stretch.speedAt(stretch.from);
            return speed > 0
                    ? stretch.from + (turnsAboveBase - stretch.startTurns()) / speed
                    : Double.NEGATIVE_INFINITY;
        }
        return stretch.frameAt(turnsAboveBase);
    }

    /** Turns per frame at a frame of the window. */
    public double speedAtFrame(double frame) {
        int i = stretchCount - 1;
        while (i > 0 && frame < stretches[i].from) {
            i--;
        }
        return stretches[i].speedAt(Math.max(frame, stretches[i].from));
    }

    private void dropPiecesBefore(long frame) {
        int gone = 0;
        while (gone < pieceCount - 1 && pieces[gone].framesLeft(frame) <= 0) {
            gone++;
        }
        if (gone > 0) {
            for (int i = 0; i < gone; i++) {
                Piece piece = pieces[0];
                System.arraycopy(pieces, 1, pieces, 0, pieces.length - 1);
                pieces[pieces.length - 1] = piece;
            }
            pieceCount -= gone;
        }
    }

    /** The hand takes over: whatever was planned from {@code frame} on makes way for a ramp to the hand's speed. */
    private void takeOver(long frame) {
        while (pieceCount > 1 && pieces[pieceCount - 1].framesLeft(frame) > 0
                && startsAtOrAfter(pieces[pieceCount - 1], frame)) {
            pieceCount--;
        }
        Piece last = pieces[pieceCount - 1];
        if (last.framesLeft(frame) > 0) {
            // not by what is left: an endless hold less its endless rest is not a number
            last.lengthFrames = (frame - last.startFrame) - last.startFraction;
        }
        appendRamp(speedAtEnd(last), handSpeed, HAND_RAMP_SECONDS);
    }

    private static boolean startsAtOrAfter(Piece piece, long frame) {
        return piece.startFrame >= frame;
    }

    private void appendNext() {
        double now = speedAtEnd(pieces[pieceCount - 1]);
        if (!Double.isNaN(handSpeed)) {
            append(Piece.Law.HOLD, handSpeed, 0, Double.POSITIVE_INFINITY);
            return;
        }
        Profile.Step step = program == null ? null : program.next();
        if (step instanceof Profile.Hold hold) {
            append(Piece.Law.HOLD, hold.hz() / rateHz, 0, hold.seconds() * rateHz);
        } else if (step instanceof Profile.Ramp ramp) {
            appendRamp(Double.isNaN(ramp.fromHz()) ? now : ramp.fromHz() / rateHz, ramp.toHz() / rateHz, ramp.seconds());
        } else if (step instanceof Profile.Sweep sweep) {
            double from = Double.isNaN(sweep.fromHz()) ? now : sweep.fromHz() / rateHz;
            double frames = sweep.seconds() * rateHz;
            append(Piece.Law.SWEEP, from, StrictMath.log(sweep.toHz() / rateHz / from) / frames, frames);
        } else if (step instanceof Profile.Crank crank) {
            Piece piece = append(Piece.Law.HOLD, crank.hz() / rateHz, 0, crank.seconds() * rateHz);
            piece.rippleDepth = crank.ripple();
            piece.ripplesPerTurn = crank.cylinders() / 2.0;
        } else {
            append(Piece.Law.HOLD, now, 0, Double.POSITIVE_INFINITY);
        }
    }

    private void appendRamp(double from, double to, double seconds) {
        double frames = seconds * rateHz;
        append(Piece.Law.RAMP, from, (to - from) / frames, frames);
    }

    private Piece append(Piece.Law law, double speed, double change, double lengthFrames) {
        Piece last = pieces[pieceCount - 1];
        Piece next = pieces[pieceCount++];
        double end = last.startFraction + last.lengthFrames;
        double wholeEnd = Math.floor(end);
        next.startFrame = last.startFrame + (long) wholeEnd;
        next.startFraction = end - wholeEnd;
        last.splitMeanAngle(next.startFrame, next.startFraction);
        double fraction = last.startTurnFraction + last.meanFraction + ripple(last, last.meanFraction);
        double carry = Math.floor(fraction);
        next.startTurn = last.startTurn + last.wholeMeanTurns + (long) carry;
        next.startTurnFraction = fraction - carry;
        next.law = law;
        next.startSpeed = speed;
        next.change = change;
        next.lengthFrames = lengthFrames;
        next.rippleDepth = 0;
        next.ripplesPerTurn = 0;
        return next;
    }

    /** What ripple adds to the mean angle; half turns of an odd number of cylinders need the whole turns too. */
    private static double ripple(Piece piece, double meanFraction) {
        if (piece.rippleDepth == 0) {
            return 0;
        }
        double phase = ripplePhase(piece, meanFraction);
        return piece.rippleDepth / (TWO_PI * piece.ripplesPerTurn) * (1 - StrictMath.cos(TWO_PI * phase));
    }

    private static double ripplePhase(Piece piece, double meanFraction) {
        double phase = piece.ripplesPerTurn * (piece.wholeMeanTurns % 2) + piece.ripplesPerTurn * meanFraction;
        return phase - Math.floor(phase);
    }

    private double speedAtEnd(Piece piece) {
        double end = piece.startFraction + piece.lengthFrames;
        long frame = piece.startFrame + (long) Math.floor(end);
        double offset = end - Math.floor(end);
        double mean = piece.meanSpeedAt(frame, offset);
        if (piece.rippleDepth == 0) {
            return mean;
        }
        piece.splitMeanAngle(frame, offset);
        return mean * (1 + piece.rippleDepth * StrictMath.sin(TWO_PI * ripplePhase(piece, piece.meanFraction)));
    }

    /** Cuts the window into stretches, each with its law told from the window's own start. */
    private void layOut() {
        stretchCount = 0;
        for (int p = 0; p < pieceCount; p++) {
            Piece piece = pieces[p];
            double from = Math.max(0, (piece.startFrame - windowStart) + piece.startFraction);
            double to = Math.min(WINDOW, piece.framesLeft(windowStart));
            if (to <= from) {
                continue;
            }
            piece.splitMeanAngle(windowStart, from);
            long turn = piece.startTurn + piece.wholeMeanTurns;
            if (stretchCount == 0) {
                baseTurn = turn;
            }
            Stretch stretch = stretches[stretchCount++];
            stretch.from = from;
            stretch.law = piece.law;
            stretch.speed = piece.meanSpeedAt(windowStart, from);
            stretch.change = piece.change;
            stretch.meanTurns = (turn - baseTurn) + piece.startTurnFraction + piece.meanFraction;
            stretch.rippleDepth = piece.rippleDepth;
            stretch.ripplesPerTurn = piece.ripplesPerTurn;
            stretch.ripplePhase = piece.rippleDepth == 0 ? 0 : ripplePhase(piece, piece.meanFraction);
            stretch.to = to;
        }
        framesFilled = false;
        windowEndTurns = stretches[stretchCount - 1].turnsAt(WINDOW);
    }

    /** Fills the arrays the first time someone asks; edges, which have instants of their own, never do. */
    private void fillFrames() {
        if (framesFilled) {
            return;
        }
        framesFilled = true;
        int i = 0;
        for (int s = 0; s < stretchCount && i < QUANTUM; s++) {
            int end = s == stretchCount - 1 ? QUANTUM : (int) Math.min(QUANTUM, Math.ceil(stretches[s].to));
            stretches[s].fill(turns, speeds, i, end);
            i = end;
        }
    }
}
