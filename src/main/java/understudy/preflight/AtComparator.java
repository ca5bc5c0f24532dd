package understudy.preflight;

import java.util.Arrays;
import understudy.rig.Connection;
import understudy.rig.Coupling;
import understudy.rig.Input;
import understudy.rig.Probe;
import understudy.rig.Transient;

/**
 * What the comparator sees of what is played.
 *
 * @param volts      from the comparator's reference, one for each step of what is played
 * @param lagSeconds by which the circuit delays a sine of the teeth's frequency
 * @param restVolts  with nothing played
 * @param saturated  a transformer's core would have to carry more than it can
 */
record AtComparator(Played played, double[] volts, double lagSeconds, double restVolts, boolean saturated) {

    static AtComparator of(Played played, Setup setup, CycleEvents events, double speedHz) {
        Connection connection = setup.built().connection();
        double[] volts = new double[played.fractions().length];
        Transient through = connection.fromRest(played.stepSeconds());
        through.jumpTo(played.fractions()[0]);
        volts[0] = through.volts(Probe.COMPARATOR);
        double mostVoltSeconds = 0;
        for (int i = 1; i < volts.length; i++) {
            through.stepTo(played.fractions()[i]);
            volts[i] = through.volts(Probe.COMPARATOR);
            if (i >= played.judgeFrom()) {
                mostVoltSeconds = Math.max(mostVoltSeconds, Math.abs(through.coreVoltSeconds()));
            }
        }
        boolean saturated = setup.rig().divider().coupling() instanceof Coupling.Transformer transformer
                && mostVoltSeconds > transformer.mostVoltSeconds();
        return new AtComparator(played, volts,
                lagSeconds(setup, connection, events.cycleHz(speedHz) / events.shortestCycles()),
                connection.restVolts(Probe.COMPARATOR), saturated);
    }

    /** When a place between the steps comes. */
    double seconds(double index) {
        return played.startSeconds() + index * played.stepSeconds();
    }

    /** Whether the input's clamp cuts it. */
    boolean isCut(Input input) {
        return input.frontEnd().clamp().filter(clamp -> Arrays.stream(volts, played.judgeFrom(), played.judgeTo())
                .anyMatch(v -> v < clamp.lowVolts() || v > clamp.highVolts())).isPresent();
    }

    int index(double seconds) {
        return (int) Math.max(0, Math.min(volts.length - 1,
                Math.rint((seconds - played.startSeconds()) / played.stepSeconds())));
    }

    private static double lagSeconds(Setup setup, Connection connection, double toothHz) {
        double leadRad = connection.gain(Probe.COMPARATOR, toothHz).phaseRad();
        if (setup.corrected() && setup.isCoupled()) {
            // up to the pins all lead is undone, as far as the parts are what they are taken for
            leadRad -= setup.connection().gain(Probe.PINS, toothHz).phaseRad();
        } else if (setup.rig().output().inverted()) {
            leadRad -= Math.PI;
        }
        return -Math.IEEEremainder(leadRad, 2 * Math.PI) / (2 * Math.PI * toothHz);
    }
}
