package understudy.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicReference;
import understudy.refusal.Refused;
import understudy.audio.Destination;
import understudy.audio.Player;
import understudy.audio.PlayerEnd;
import understudy.audio.PlayerReport;
import understudy.audio.PlayerSettings;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.wave.Hand;

/**
 * One healthy output of a pattern at a steady speed, on the first channel, ready to be injected.
 *
 * @param asked       the pattern with nothing but that output
 * @param destination where it goes
 */
record SteadySignal(Playable asked, Destination destination) {

    /** @throws Refused for what {@code play} would refuse, too */
    static SteadySignal of(Pattern declared, Output output, double speedHz, Optional<Bench> bench, boolean fit, int rateHz,
            OptionalInt askedRateHz, DestinationOptions.Chosen chosen) {
        Pattern pattern = declared.withProfile(Optional.empty()).withFaults(List.of()).withOutputs(List.of(output));
        Arguments given = new Arguments();
        Playable playable = SignalOptions.playable(pattern, speedHz, rateHz, new int[] {0}, Benches.only(output, bench),
                fit, given);
        given.refuse();
        Destination destination = chosen.destination(playable, askedRateHz);
        Playable atRate = playable.atRate(destination.rateHz());
        SwingNote.judge(atRate, given);
        given.refuse();
        return new SteadySignal(atRate, destination);
    }

    /** What there is to know of it before it plays: the same that {@code play} says. */
    List<String> notes() {
        List<String> lines = new ArrayList<>(asked.voltsNote().lines().toList());
        lines.addAll(Foresight.lines(asked));
        SwingNote.judge(asked, new Arguments()).ifPresent(warning -> lines.addAll(warning.lines().toList()));
        return lines;
    }

    /** Ready to start, into the file if there is one. */
    static Player open(AtomicReference<Hand> hand, Playable playable, Destination to) {
        return Player.open(() -> playable.onChannels(playable.renderer(hand)), playable.scale(), to, PlayerSettings.DEFAULT);
    }

    /** The report of a player that has ended, or was told to stop; what failed within it is a defect. */
    static PlayerReport end(Player player) {
        try {
            PlayerReport report = player.awaitEnd();
            if (report.end() instanceof PlayerEnd.Fault fault) {
                throw new IllegalStateException("playing failed", fault.cause());
            }
            return report;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("nobody interrupts this thread", e);
        }
    }
}
