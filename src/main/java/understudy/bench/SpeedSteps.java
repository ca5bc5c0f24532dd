package understudy.bench;

import understudy.pattern.Speed;

/**
 * The speeds that a key steps to: round numbers in the pattern's own unit, about an eighth (coarse) or an eightieth
 * (fine) of the present speed apart, so that a step feels the same at cranking and at full speed.
 */
final class SpeedSteps {

    private static final double COARSE = 1 / 8.0;
    private static final double FINE = 1 / 80.0;
    /** How near to a round number counts as being there, in steps: far above rounding errors, far below what shows. */
    private static final double NEAR = 1e-6;

    private final Speed speed;

    SpeedSteps(Speed speed) {
        this.speed = speed;
    }

    /** The next round speed above, at most the highest allowed. Turns per second in and out. */
    double faster(double nowHz, boolean fine) {
        double now = speed.inUnit(nowHz);
        double step = step(now, fine);
        return limited((Math.floor(now / step + NEAR) + 1) * step);
    }

    /** The next round speed below, at least the lowest allowed. */
    double slower(double nowHz, boolean fine) {
        double now = speed.inUnit(nowHz);
        // judged a hair lower, so that a step down from 1000 is as long as the one that led up to it
        double step = step(now * (1 - NEAR), fine);
        return limited((Math.ceil(now / step - NEAR) - 1) * step);
    }

    /** 1, 2 or 5 times a power of ten. */
    private double step(double now, boolean fine) {
        double least = speed.inUnit(speed.toHz()) * 1e-4;
        double wanted = Math.max(now * (fine ? FINE : COARSE), least);
        double decade = Math.pow(10, Math.floor(Math.log10(wanted)));
        double inDecade = wanted / decade;
        return decade * (inDecade >= 5 ? 5 : inDecade >= 2 ? 2 : 1);
    }

    private double limited(double inUnit) {
        return Math.max(speed.fromHz(), Math.min(speed.toHz(), speed.hz(inUnit)));
    }
}
