package understudy.preflight;

import java.util.Arrays;

/**
 * What the input makes of the signal at one steady speed.
 *
 * @param speedHz         turns per second
 * @param countedPerTurn  timing edges counted for one turn
 * @param expectedPerTurn that there should be
 * @param marginVolts     at the comparator, of the worst edge: how far beyond what makes it switch; negative: short of it
 * @param marginDb        of the same edge; negative infinity when nothing goes that way, infinite when it is beyond at rest
 * @param worstAtDeg      where that edge is, degrees of the speed's turn
 * @param timingErrorDeg  of the edge furthest from its place, late positive, degrees of the speed's turn; NaN unless the
 *                        row of edges was recognised
 * @param meanLateDeg     by how much all edges come late in the mean, likewise
 * @param oscillations    of bursts: how many swings of the faintest are beyond what the input needs; else 0
 * @param clipped         the output would have to go beyond full scale
 */
public record Decoding(
        double speedHz,
        DecodingVerdict verdict,
        double countedPerTurn,
        double expectedPerTurn,
        double marginVolts,
        double marginDb,
        double worstAtDeg,
        double timingErrorDeg,
        double meanLateDeg,
        int oscillations,
        boolean clipped) {

    public boolean isDecoded() {
        return verdict == DecodingVerdict.DECODED;
    }

    /** What is worse of the same speed by two builds, taken one by one. */
    Decoding worse(Decoding other) {
        Decoding less = other.marginVolts < marginVolts ? other : this;
        Decoding lost = isDecoded() ? other : this;
        boolean later = Math.abs(other.timingErrorDeg) > Math.abs(timingErrorDeg);
        return new Decoding(speedHz, lost.verdict, lost.countedPerTurn, expectedPerTurn, less.marginVolts, less.marginDb,
                less.worstAtDeg, lost.isDecoded() ? later ? other.timingErrorDeg : timingErrorDeg : lost.timingErrorDeg,
                lost.meanLateDeg, Math.min(oscillations, other.oscillations), clipped || other.clipped);
    }

    static Decoding of(Setup setup, double speedHz) {
        CycleEvents events = CycleEvents.of(setup);
        return of(setup, events, Played.at(setup, events, speedHz), speedHz);
    }

    static Decoding of(Setup setup, CycleEvents events, Played played, double speedHz) {
        AtComparator signal = AtComparator.of(played, setup, events, speedHz);
        Comparator comparator = Comparator.of(setup, signal.restVolts(), events.rising());
        double[] places = comparator.switches(signal.volts(), played.stepSeconds());
        double from = signal.seconds(played.judgeFrom());
        double to = signal.seconds(played.judgeTo());
        double[] seconds = Arrays.stream(places).map(signal::seconds).filter(at -> at >= from && at <= to).toArray();
        ToothDecoder.Found found = new ToothDecoder(events, speedHz, signal.lagSeconds()).judge(seconds, to - from);
        double shift = Double.isNaN(found.meanLateCycles()) ? 0 : found.meanLateCycles() / events.cycleHz(speedHz);
        Worst worst = Worst.of(signal, comparator, events, speedHz, shift);
        DecodingVerdict verdict = signal.saturated() ? DecodingVerdict.SATURATED
                : comparator instanceof Ringing && signal.isCut(setup.built().input()) ? DecodingVerdict.CUT : found.verdict();
        return new Decoding(speedHz, verdict, found.perTurn(), events.perTurn(), worst.spare().volts(),
                worst.spare().db(), worst.place() * events.cycleDeg(), found.worstLateCycles() * events.cycleDeg(),
                found.meanLateCycles() * events.cycleDeg(), worst.oscillations(), played.clipped());
    }

    /** The swing with the least to spare: from each timing event to the next there is one up and one down. */
    private record Worst(Comparator.Spare spare, double place, int oscillations) {
        static Worst of(AtComparator signal, Comparator comparator, CycleEvents events, double speedHz, double shift) {
            double[] places = events.timing();
            double[] lengths = CycleEvents.intervals(places);
            double cycleSeconds = 1 / events.cycleHz(speedHz);
            double from = signal.seconds(signal.played().judgeFrom()) - shift;
            double to = signal.seconds(signal.played().judgeTo()) - shift;
            long cycle = (long) Math.floor((from - events.seconds(0, 0, speedHz)) / cycleSeconds);
            Worst worst = null;
            Comparator.Swing before = null;
            for (; events.seconds(cycle, 0, speedHz) < to; cycle++) {
                for (int k = 0; k < places.length; k++) {
                    double start = events.seconds(cycle, places[k], speedHz);
                    double end = start + lengths[k] * cycleSeconds;
                    if (start < from || end > to) {
                        continue;
                    }
                    Comparator.Swing swing = swing(signal, start + shift, end + shift);
                    if (comparator instanceof Ringing ringing) {
                        // from before the burst, where it is still quiet
                        int some = ringing.oscillations(signal.volts(), signal.index(start), signal.index(end));
                        worst = worst == null || some < worst.oscillations || some == worst.oscillations
                                && ringing.spare(swing, swing, 0).volts() < worst.spare.volts()
                                ? new Worst(ringing.spare(swing, swing, 0), places[k], some) : worst;
                    } else if (before != null) {
                        Comparator.Spare spare = comparator.spare(swing, before, end - start);
                        worst = worst == null || spare.volts() < worst.spare.volts()
                                ? new Worst(spare, (places[k] + lengths[k]) % 1, 0) : worst;
                    }
                    before = swing;
                }
            }
            return worst;
        }

        private static Comparator.Swing swing(AtComparator signal, double from, double to) {
            double most = Double.NEGATIVE_INFINITY;
            double least = Double.POSITIVE_INFINITY;
            for (int i = signal.index(from); i <= signal.index(to); i++) {
                most = Math.max(most, signal.volts()[i]);
                least = Math.min(least, signal.volts()[i]);
            }
            return new Comparator.Swing(most, least);
        }
    }
}
