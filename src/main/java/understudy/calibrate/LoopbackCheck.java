package understudy.calibrate;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import understudy.measure.InputCheck;
import understudy.measure.InputFault;

/** Looks over what came back through the patch cable, and calls by name what would spoil a calibration. */
public final class LoopbackCheck {

    /** An open input hums and hisses alike before the pulses and after; a cable makes it many times louder. */
    private static final double LOUDER = 2;
    /** Of the silence before the pulses: the rest is left to what systems hand over at once. */
    private static final double SURELY_SILENT = 0.8;

    private LoopbackCheck() {}

    /** All that is wrong with one channel, from 0; the others count only to tell a wrong channel from silence. */
    public static List<InputFault> of(TestProgram program, LoopbackRun run, int channel) {
        double expected = run.givenUp() ? 0 : (double) run.startedAtFrame() / program.rateHz() + program.soundSeconds();
        List<InputFault> faults = new InputCheck(program.rateHz(), 1, expected, TestProgram.TONE_HZ).of(run.channels()).stream()
                .filter(fault -> fault.channel() == channel + 1).toList();
        if (faults.stream().anyMatch(LoopbackCheck::dead) || !onlyNoise(program, run, channel)) {
            return faults;
        }
        return List.of(new InputFault(InputFault.Kind.SILENT, channel + 1, String.format(Locale.ROOT,
                "channel %d: nothing of what is played comes back, only hum or noise of %.2f %% of full scale, which was there"
                        + " before; check that the cable runs from this output to this input", channel + 1,
                100 * peak(run.channels()[channel]))));
    }

    private static boolean dead(InputFault fault) {
        return fault.kind() == InputFault.Kind.SILENT || fault.kind() == InputFault.Kind.CHANNEL_DEAD;
    }

    private static boolean onlyNoise(TestProgram program, LoopbackRun run, int channel) {
        double[] recorded = run.channels()[channel];
        int silent = (int) Math.min(recorded.length, run.startedAtFrame() + SURELY_SILENT * program.pulsesAt());
        return peak(recorded) < LOUDER * peak(Arrays.copyOf(recorded, silent));
    }

    private static double peak(double[] samples) {
        return Arrays.stream(samples).map(Math::abs).max().orElse(0);
    }
}
