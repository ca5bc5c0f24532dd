package understudy.calibrate;

import understudy.refusal.Refused;
import understudy.audio.DeviceChoice;
import understudy.audio.Player;
import understudy.audio.PlayerSettings;
import understudy.rig.OutputScale;

/** The tone that plays while somebody reads a meter. */
public final class SteadyTone {

    private SteadyTone() {}

    /**
     * Ready to start; plays until stopped.
     *
     * @param channel     that plays, from 0
     * @param frequencyHz whole, so that a second of it repeats without a seam
     * @param level       peak, fraction of full scale
     * @throws Refused if the device doesn't open
     */
    public static Player open(DeviceChoice output, int channel, int frequencyHz, double level) {
        double[] second = new double[output.rateHz()];
        for (int i = 0; i < second.length; i++) {
            // whole numbers first, so that no rounding of the phase grows over the second
            long turned = (long) i * frequencyHz % output.rateHz();
            second[i] = level * StrictMath.sin(2 * StrictMath.PI * turned / output.rateHz());
        }
        return Player.open(new SampleSource(second, output.rateHz(), channel, true),
                new SampleSource(second, output.rateHz(), channel, true), OutputScale.PARTS, output,
                PlayerSettings.DEFAULT.withTargetFill(LoopbackRun.FILL));
    }
}
