package understudy.calibrate;

import java.util.List;
import understudy.measure.InputCheck;
import understudy.measure.InputFault;

/** Looks over what came back through the patch cable, and calls by name what would spoil a calibration. */
public final class LoopbackCheck {

    private LoopbackCheck() {}

    /** All that is wrong with one channel, from 0; the others count only to tell a wrong channel from silence. */
    public static List<InputFault> of(TestProgram program, LoopbackRun run, int channel) {
        double expected = (double) run.startedAtFrame() / program.rateHz() + program.soundSeconds();
        return new InputCheck(program.rateHz(), 1, expected, TestProgram.TONE_HZ).of(run.channels()).stream()
                .filter(fault -> fault.channel() == channel + 1).toList();
    }
}
