package understudy.cli;

import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.IntStream;
import understudy.pattern.Output;
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
 * @param level           what the pattern's volts are multiplied by
 * @param benches         the rig of each output and the input it is clipped on to, if they are told
 */
record Playable(
        Pattern pattern, double startHz, int rateHz, int[] outputOfChannel, double level, Benches benches) {

    static final int DEFAULT_RATE_HZ = 48_000;

    Playable atRate(int otherHz) {
        return new Playable(pattern, startHz, otherHz, outputOfChannel, level, benches);
    }

    Playable startingAt(double speedHz) {
        return new Playable(pattern, speedHz, rateHz, outputOfChannel, level, benches);
    }

    /** The same, to be played once more. */
    Playable anew() {
        return new Playable(pattern, startHz, rateHz, outputOfChannel, level, benches.anew());
    }

    Renderer renderer(AtomicReference<Hand> hand) {
        return new Renderer(pattern, rateHz, startHz, hand);
    }

    AtomicReference<Hand> hand() {
        return new AtomicReference<>(Renderer.startingHand(pattern));
    }

    /** The renderer's outputs on the channels asked for, bent so that they arrive at the pins as they are. */
    VoltSource onChannels(Renderer renderer) {
        VoltSource volts = benches.isEmpty() ? renderer : benches.bend(renderer, pattern, level);
        boolean asTheyCome = outputOfChannel.length == volts.channels()
                && IntStream.range(0, outputOfChannel.length).allMatch(channel -> outputOfChannel[channel] == channel);
        return asTheyCome ? volts : new Channels(volts, outputOfChannel);
    }

    /** What {@link #onChannels} gives is worth. */
    OutputScale scale() {
        return !benches.isEmpty() ? OutputScale.PARTS
                : new OutputScale(OutputScale.NOMINAL.fullScaleVolts() / level, OutputScale.NOMINAL.calibrated());
    }

    /** Peak volts that an output's channel gives at full scale: at the pins, or, with no rig told, at the bare output. */
    static double fullScaleVolts(Output output, Benches benches) {
        return benches.of(output).map(Bench::fullScaleVolts).orElse(OutputScale.NOMINAL.fullScaleVolts());
    }

    /** Each output that is played, once. */
    List<Output> played() {
        return Arrays.stream(outputOfChannel).filter(output -> output != Channels.SILENT).distinct()
                .mapToObj(pattern.outputs()::get).toList();
    }

    /** What the volts are worth, said once and plainly. */
    String voltsNote() {
        String scaled = level == 1 ? "" : "scaled to fit: 1 V of the pattern comes out as "
                + new Quantity(level, Unit.VOLT).rounded(3) + "\n";
        return scaled + benches.note().orElse("volts are not calibrated: an output of 1.0 V rms is taken for granted,"
                + " and yours may give 20 % less or more");
    }
}
