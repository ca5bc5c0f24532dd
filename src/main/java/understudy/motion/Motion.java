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

    /** What is decided already when the hand asks for something. */
    public static final int WINDOW_FRAMES = 2 * QUANTUM;
    /** A live change of speed is a linear ramp of this length, so that the angle has no jump and no kink. */
    public static final double HAND_RAMP_SECONDS = 0.05;
    /** Shortest step of a profile that a pattern may have; it tells how many pieces a window can hold. */
    public static final double SHORTEST_STEP_SECONDS = 0.001;

    private final int rateHz;
    private final Course course;
    private final Stretch[] stretches;
    private int stretchCount;

    private long windowStart = -QUANTUM;
    private boolean started;
    private double handSpeed = Double.NaN;
    private Travel travel;
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
        this.course = new Course(profile, startHz, rateHz, WINDOW_FRAMES);
        stretches = new Stretch[course.capacity()];
        for (int i = 0; i < stretches.length; i++) {
            stretches[i] = new Stretch();
        }
    }

    /**
     * Moves on by one quantum.
     *
     * @param handHz turns per second that the hand asks for; NaN leaves the speed to the profile
     */
    public void advance(double handHz) {
        advance(handHz, null);
    }

    /**
     * Moves on by one quantum.
     *
     * @param handHz turns per second that the hand asks for; NaN leaves the speed to the profile
     * @param way    that it asks to be taken there, once; null takes the usual short ramp
     */
    public void advance(double handHz, Travel way) {
        windowStart += QUANTUM;
        course.forgetBefore(windowStart);
        double asked = handHz / rateHz;
        if (way != null && way != travel) {
            travel = way;
            handSpeed = asked;
            course.takeOver(started ? windowStart + QUANTUM : windowStart, way.program);
        } else if (!Double.isNaN(asked) && asked != handSpeed) {
            handSpeed = asked;
            course.takeOver(started ? windowStart + QUANTUM : windowStart, asked);
        }
        course.reach(windowStart + WINDOW_FRAMES);
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

    /** Cuts the window into stretches, each with its law told from the window's own start. */
    private void layOut() {
        stretchCount = 0;
        for (int p = 0; p < course.count(); p++) {
            Piece piece = course.piece(p);
            double from = Math.max(0, (piece.startFrame - windowStart) + piece.startFraction);
            double to = Math.min(WINDOW_FRAMES, piece.framesLeft(windowStart));
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
            stretch.ripplePhase = piece.ripplePhase();
            stretch.to = to;
        }
        framesFilled = false;
        windowEndTurns = stretches[stretchCount - 1].turnsAt(WINDOW_FRAMES);
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
