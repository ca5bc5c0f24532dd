package understudy.reading;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import understudy.quantity.Dimension;

/** What a learned scale says about teeth, tyre and cylinders, and how it stands beside a declared one. */
public final class Implied {

    /** By how much a tyre's load, pressure and wear move its circumference; usual in the trade, not checked. */
    public static final double TYRE_PERCENT = 3;
    private static final int MOST_TEETH = 1000;
    private static final int MOST_CYLINDERS = 16;

    private Implied() {}

    /** Events a kilometre; empty for a display that shows no road speed, or not surely more with more events. */
    public static Optional<Estimate> pulsesPerKm(Learned learned) {
        return inverse(learned, Dimension.ROAD_SPEED, 3600);
    }

    /** Events for one turn of the crank; empty for a display that shows no engine speed. */
    public static Optional<Estimate> eventsPerTurn(Learned learned) {
        return inverse(learned, Dimension.TURNING, 60);
    }

    private static Optional<Estimate> inverse(Learned learned, Dimension dimension, double perBase) {
        Estimate perHz = learned.fit().factor();
        return learned.unit().dimension() == dimension && perHz.low() > 0
                ? Optional.of(perHz.map(slope -> perBase / learned.unit().toBase(slope))) : Optional.empty();
    }

    /** The whole numbers of teeth on a ring at a wheel that rolls so far in one turn, within {@value #TYRE_PERCENT} %. */
    public static List<Integer> teeth(Estimate pulsesPerKm, double rollsMetres) {
        return whole(pulsesPerKm.low() * rollsMetres / 1000 * (1 - TYRE_PERCENT / 100),
                pulsesPerKm.high() * rollsMetres / 1000 * (1 + TYRE_PERCENT / 100), MOST_TEETH);
    }

    /** The four-stroke engines that have so many events a turn, one a power stroke. */
    public static List<Integer> cylinders(Estimate eventsPerTurn) {
        return whole(2 * eventsPerTurn.low(), 2 * eventsPerTurn.high(), MOST_CYLINDERS);
    }

    static List<Integer> whole(double low, double high, int most) {
        return IntStream.rangeClosed((int) Math.max(1, Math.ceil(low)), (int) Math.min(most, Math.floor(high))).boxed().toList();
    }

    /**
     * How many times the declared slope the learned one is; empty where the declared one is a table, or in another
     * dimension.
     */
    public static Optional<Beside> beside(Learned learned, Reading declared) {
        double slope = declared.scale() instanceof Scale.Proportional factor ? factor.basePerHz()
                : declared.scale() instanceof Scale.Line line ? line.basePerHz() : Double.NaN;
        if (declared.unit().dimension() != learned.unit().dimension() || Double.isNaN(slope)) {
            return Optional.empty();
        }
        Estimate ratio = learned.fit().factor().map(perHz -> learned.unit().toBase(perHz) / slope);
        return Optional.of(new Beside(ratio, declared.tolerance().percent() / 100));
    }

    /**
     * A learned slope beside the declared one.
     *
     * @param ratio    learned over declared
     * @param tolerance of the declared one, as a part
     */
    public record Beside(Estimate ratio, double tolerance) {

        /** Whether the learned slope may be so many times the declared one. */
        public boolean maybe(double times) {
            return ratio.low() <= times * (1 + tolerance) && ratio.high() >= times * (1 - tolerance);
        }
    }
}
