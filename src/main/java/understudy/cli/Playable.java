package understudy.cli;

import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.IntStream;
import understudy.pattern.Pattern;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.rig.OutputScale;
import understudy.wave.Hand;
import understudy.wave.Renderer;
import understudy.wave.VoltSource;

/**
 * A signal that is fully decided on: what the command line and the pattern file say together.
 *
 * @param pattern         with the profile, the faults and the seed asked for
 * @param startHz         speed at the start, turns per second
 * @param rateHz          samples a second
 * @param outputOfChannel for each channel the index of its output, or {@link Channels#SILENT}
 * @param scale           what full scale is taken to be worth
 */
record Playable(Pattern pattern, double startHz, int rateHz, int[] outputOfChannel, OutputScale scale) {

    static final int DEFAULT_RATE_HZ = 48_000;

    Playable atRate(int otherHz) {
        return new Playable(pattern, startHz, otherHz, outputOfChannel, scale);
    }

    Renderer renderer(AtomicReference<Hand> hand) {
        return new Renderer(pattern, rateHz, startHz, hand);
    }

    AtomicReference<Hand> hand() {
        return new AtomicReference<>(Renderer.startingHand(pattern));
    }

    /** The renderer's outputs on the channels asked for. */
    VoltSource onChannels(Renderer renderer) {
        boolean asTheyCome = outputOfChannel.length == renderer.channels()
                && IntStream.range(0, outputOfChannel.length).allMatch(channel -> outputOfChannel[channel] == channel);
        return asTheyCome ? renderer : new Channels(renderer, outputOfChannel);
    }

    /** What the volts are worth, said once and plainly. */
    String voltsNote() {
        double full = scale.fullScaleVolts();
        double nominal = OutputScale.NOMINAL.fullScaleVolts();
        String scaled = full == nominal ? "" : "scaled to fit: 1 V of the pattern comes out as "
                + new Quantity(nominal / full, Unit.VOLT).rounded(3) + "\n";
        return scaled + "volts are not calibrated: an output of 1.0 V rms is taken for granted, and yours may give 20 %"
                + " less or more";
    }
}
