package understudy.cli;

import java.util.Optional;
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
 * @param scale           how many of the pattern's volts become full scale
 * @param bench           the rig and the input it is clipped on to, if they are told
 */
record Playable(
        Pattern pattern, double startHz, int rateHz, int[] outputOfChannel, OutputScale scale, Optional<Bench> bench) {

    static final int DEFAULT_RATE_HZ = 48_000;

    Playable atRate(int otherHz) {
        return new Playable(pattern, startHz, otherHz, outputOfChannel, scale, bench);
    }

    /** The same, to be played once more. */
    Playable anew() {
        return new Playable(pattern, startHz, rateHz, outputOfChannel, scale, bench.map(Bench::anew));
    }

    Renderer renderer(AtomicReference<Hand> hand) {
        return new Renderer(pattern, rateHz, startHz, hand);
    }

    AtomicReference<Hand> hand() {
        return new AtomicReference<>(Renderer.startingHand(pattern));
    }

    /** The renderer's outputs on the channels asked for, bent so that they arrive at the pins as they are. */
    VoltSource onChannels(Renderer renderer) {
        VoltSource volts = bench.<VoltSource>map(known -> known.bend(renderer, pattern, scale)).orElse(renderer);
        boolean asTheyCome = outputOfChannel.length == volts.channels()
                && IntStream.range(0, outputOfChannel.length).allMatch(channel -> outputOfChannel[channel] == channel);
        return asTheyCome ? volts : new Channels(volts, outputOfChannel);
    }

    /** What the volts are worth, said once and plainly. */
    String voltsNote() {
        double full = scale.fullScaleVolts();
        double given = bench.map(Bench::fullScaleVolts).orElse(OutputScale.NOMINAL.fullScaleVolts());
        String scaled = full == given ? "" : "scaled to fit: 1 V of the pattern comes out as "
                + new Quantity(given / full, Unit.VOLT).rounded(3) + "\n";
        return scaled + bench.map(Bench::note).orElse("volts are not calibrated: an output of 1.0 V rms is taken for granted,"
                + " and yours may give 20 % less or more");
    }
}
