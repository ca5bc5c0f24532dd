package understudy.wave;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import understudy.rig.Connection;
import understudy.rig.Coupling;
import understudy.rig.DroopCorrection;
import understudy.rig.Probe;
import understudy.rig.Rig;

/**
 * Bends what a source gives so that it arrives at the pins as it was, in spite of the capacitors or the transformer on
 * the way, as long as full scale allows. Each channel has a rig and an input of its own. What comes out are no longer volts
 * but parts of full scale, -1 to 1, since a volt of one channel need not be a volt of the other.
 *
 * <p>First the mean goes, since no direct voltage passes: the healthy pattern's at once, what faults or the hand change
 * about it slowly, through high-passes far below the rig's own corner, one more than the rig has, so that the output
 * never has to hold a direct voltage. Then {@link DroopCorrection} undoes the rest exactly.
 */
public final class DroopFree implements VoltSource {

    /** Of the rig's own corner, where the signal still falls off: a tilt of 5 % becomes one of 0.05 % a high-pass. */
    private static final double CORNER_PART = 0.01;
    private static final double MID_HZ = 1000;

    private final VoltSource source;
    private final double level;
    private final Track[] channels;

    /**
     * @param connections of each of the source's channels; one without is silent
     * @param meanVolts   of each of the source's channels; see {@link MeanVolts}
     * @param level       times the source's volts, the same for all
     */
    public DroopFree(VoltSource source, List<Optional<Connection>> connections, double[] meanVolts, double level) {
        this.source = source;
        this.level = level;
        this.channels = new Track[source.channels()];
        for (int channel = 0; channel < channels.length; channel++) {
            double mean = meanVolts[channel];
            channels[channel] = connections.get(channel).map(known -> track(known, mean)).orElse(null);
        }
    }

    private Track track(Connection connection, double meanVolts) {
        double cornerHz = cornerHz(connection).orElse(0.0);
        int stages = blocks(connection.rig()) == 0 ? 0 : blocks(connection.rig()) + 1;
        return new Track(connection.droopCorrection(1.0 / source.rateHz()), stages, meanVolts,
                1 - StrictMath.exp(-2 * Math.PI * cornerHz * CORNER_PART / source.rateHz()));
    }

    /** Where a rig's own fall-off at low frequencies begins; none when direct voltage passes. */
    public static Optional<Double> cornerHz(Connection connection) {
        return blocks(connection.rig()) == 0 ? Optional.empty() : connection.lowCornerHz(Probe.PINS, MID_HZ);
    }

    /** Where it begins after this correction. */
    public static double cornerLeftHz(double cornerHz) {
        return cornerHz * CORNER_PART;
    }

    /** How many of its parts block direct voltage. */
    private static int blocks(Rig rig) {
        return (rig.output().couplingFarads().isPresent() ? 1 : 0)
                + (rig.divider().coupling() instanceof Coupling.Direct ? 0 : 1);
    }

    @Override
    public int channels() {
        return source.channels();
    }

    @Override
    public int rateHz() {
        return source.rateHz();
    }

    @Override
    public void render(double[][] volts, int frames) {
        source.render(volts, frames);
        for (int channel = 0; channel < channels.length; channel++) {
            if (channels[channel] == null) {
                Arrays.fill(volts[channel], 0, frames, 0);
            } else {
                channels[channel].bend(volts[channel], frames);
            }
        }
    }

    /** How many samples would have needed more than full scale, over all channels. */
    public long clippedFrames() {
        long clipped = 0;
        for (Track channel : channels) {
            clipped += channel == null ? 0 : channel.correction.clippedFrames();
        }
        return clipped;
    }

    private final class Track {
        private final DroopCorrection correction;
        private final double[] means;
        private final double share;

        Track(DroopCorrection correction, int stages, double meanVolts, double share) {
            this.correction = correction;
            this.means = new double[stages];
            this.share = share;
            if (stages > 0) {
                means[0] = meanVolts;
            }
        }

        void bend(double[] volts, int frames) {
            for (int i = 0; i < frames; i++) {
                double v = volts[i];
                for (int stage = 0; stage < means.length; stage++) {
                    double mean = means[stage];
                    v -= mean;
                    means[stage] = mean + share * v;
                }
                volts[i] = correction.next(v * level);
            }
        }
    }
}
