package understudy.cli;

import java.io.IOException;
import java.util.function.Supplier;
import understudy.audio.LoopbackCard;

/** What a machine that is busy with other things does to a cable is not what a test is about. */
final class BusyMachine {

    private static final int MOST_TRIES = 6;

    private BusyMachine() {}

    /**
     * A calibration, done again while its own samples went missing, as it says itself, or while what disturbs the cable had
     * nothing to play. After several tries it is judged as it is.
     */
    static Run.Outcome calibrated(LoopbackCard card, Supplier<Run.Outcome> calibration) throws IOException {
        Run.Outcome run = null;
        for (int tries = 0; tries < MOST_TRIES; tries++) {
            long before = card.helperGaps();
            run = calibration.get();
            if (card.helperGaps() == before && !(run.out() + run.err()).contains("samples went missing")) {
                return run;
            }
        }
        return run;
    }
}
