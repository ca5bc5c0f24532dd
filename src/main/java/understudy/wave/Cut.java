package understudy.wave;

import understudy.motion.Motion;

/** An open contact: the line goes to its resting volts and comes back, over smoothed edges at exact instants. */
final class Cut implements Disturbance {
    private final Switch when;
    private final Moments openings;
    private final double restVolts;
    private final StepTrain contact = new StepTrain(64, 1);
    private final double[] made = new double[Motion.QUANTUM];
    private boolean open;
    private double closesAt;

    Cut(Switch when, Moments openings, double restVolts) {
        this.when = when;
        this.openings = openings;
        this.restVolts = restVolts;
    }

    @Override
    public void apply(double[] volts, Motion motion, Axis turnAxis, long faultsOn) {
        while (true) {
            double frame = openings.next(when, faultsOn);
            if (Double.isNaN(frame)) {
                break;
            }
            closeBefore(frame);
            if (!open && !contact.full()) {
                contact.stepTo(frame, 0);
                open = true;
                closesAt = frame;
            }
            // opening again while open only makes it longer
            closesAt = Math.max(closesAt, frame + openings.lengthFrames());
        }
        closeBefore(2 * Motion.QUANTUM);
        contact.render(made, Motion.QUANTUM);
        contact.shift(Motion.QUANTUM);
        closesAt -= Motion.QUANTUM;
        for (int i = 0; i < Motion.QUANTUM; i++) {
            volts[i] = restVolts + made[i] * (volts[i] - restVolts);
        }
    }

    private void closeBefore(double frame) {
        if (open && closesAt < frame && !contact.full()) {
            contact.stepTo(closesAt, 1);
            open = false;
        }
    }
}
