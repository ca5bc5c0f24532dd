package understudy.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;

/** A rig and an input as they may really be, every part somewhere within its tolerance. */
public final class WorstCase {
    /** Of volts and amperes that no part changes. */
    private static final double ROUNDING = 1e-9;
    /** More toleranced parts than any circuit of the model has. */
    private static final int MOST_PARTS = 16;

    private WorstCase() {}

    /** One of the ways in which the parts may turn out; all tolerances are zero. */
    public record Build(Rig rig, Input input) {
        public Connection connection() {
            return new Connection(rig, input);
        }
    }

    /**
     * Every combination of the ends of the tolerances. Volts and currents of a resistor network are monotone in each
     * part between its ends, so the worst is at a corner. Capacitors and inductors stay nominal: neither the first
     * instant, nor the middle of the band, nor the state at rest depends on them.
     */
    public static List<Build> corners(Rig rig, Input input) {
        List<Build> corners = new ArrayList<>();
        long count = count(rig, input);
        for (long ends = 0; ends < count; ends++) {
            corners.add(corner(rig, input, ends));
        }
        return corners;
    }

    /** How many corners there are. */
    static long count(Rig rig, Input input) {
        Corner count = new Corner(0, Stores.NOMINAL);
        build(rig, input, count);
        if (count.parts > MOST_PARTS) {
            throw new IllegalStateException("too many parts: " + count.parts);
        }
        return 1L << count.parts;
    }

    /** One of them, counted from 0; the same number has the same parts at the same ends while the same parts are there. */
    static Build corner(Rig rig, Input input, long ends) {
        return build(rig, input, new Corner(ends, Stores.NOMINAL));
    }

    /** So many random builds, every part, stores too, uniform within its tolerance; the same seed gives the same. */
    public static void draw(Rig rig, Input input, int builds, long seed, Consumer<Build> each) {
        Random random = new Random(seed);
        Pick pick = new Pick() {
            @Override
            public double of(Spread spread) {
                return spread.at(2 * random.nextDouble() - 1);
            }

            @Override
            public double ofCoupling(Spread spread) {
                return of(spread);
            }

            @Override
            public double ofFilter(Spread spread) {
                return of(spread);
            }
        };
        for (int i = 0; i < builds; i++) {
            each.accept(build(rig, input, pick));
        }
    }

    /** The least margin of all corners. */
    public static double marginVolts(Rig rig, Input input, Use use) {
        return marginVolts(corner(rig, input, worst(rig, input, use)), use);
    }

    /** The corner with the least margin. */
    static long worst(Rig rig, Input input, Use use) {
        long worst = 0;
        double least = Double.POSITIVE_INFINITY;
        long count = count(rig, input);
        for (long ends = 0; ends < count; ends++) {
            double margin = marginVolts(corner(rig, input, ends), use);
            if (margin < least) {
                least = margin;
                worst = ends;
            }
        }
        return worst;
    }

    static double marginVolts(Build build, Use use) {
        return build.connection().levels(use).marginVolts(build.input);
    }

    /**
     * Where what stores stands within its tolerance, from -1, the smallest, to 1, the largest.
     *
     * @param coupling capacitors in the signal's way, a transformer's inductance
     * @param filters  capacitors to ground
     */
    public record Stores(int coupling, int filters) {
        static final Stores NOMINAL = new Stores(0, 0);
    }

    /**
     * A build in which some volts or some current are least: each part goes to the end that gives less, over and over, until
     * no part by itself gives less at its other end. Where the effect of each part goes the same way wherever the others
     * stand, as with swings and resting volts, that is the least of all corners.
     */
    public static Build least(Rig rig, Input input, Stores stores, ToDoubleFunction<Build> measure) {
        long count = count(rig, input);
        long ends = 0;
        double least = measure.applyAsDouble(build(rig, input, new Corner(ends, stores)));
        for (long unchanged = 1, part = 1; unchanged < count; unchanged <<= 1, part = part << 1 < count ? part << 1 : 1) {
            double other = measure.applyAsDouble(build(rig, input, new Corner(ends ^ part, stores)));
            if (other < least - ROUNDING) {
                least = other;
                ends ^= part;
                unchanged = 1;
            }
        }
        return build(rig, input, new Corner(ends, stores));
    }

    /** What part, 0 to 1, of random builds has a margin above zero. */
    public static double yield(Rig rig, Input input, Use use, int builds, long seed) {
        int[] good = new int[1];
        draw(rig, input, builds, seed, build -> {
            if (marginVolts(build, use) > 0) {
                good[0]++;
            }
        });
        return (double) good[0] / builds;
    }

    private static Build build(Rig rig, Input input, Pick pick) {
        Rig built = rig.settled(pick);
        if (input instanceof ReluctorInput reluctor) {
            return new Build(built, reluctor.settled(pick));
        } else if (input instanceof PulledUpInput pulledUp) {
            return new Build(built, pulledUp.settled(pick));
        }
        return new Build(built, ((ResistiveInput) input).settled(pick));
    }

    /** Takes each toleranced part, in the order in which they are asked for, at the end that its bit says. */
    private static final class Corner implements Pick {
        private final long ends;
        private final Stores stores;
        private int parts;

        Corner(long ends, Stores stores) {
            this.ends = ends;
            this.stores = stores;
        }

        @Override
        public double of(Spread spread) {
            if (spread.tolerance() == 0 || spread.nominal() == 0) {
                return spread.nominal();
            }
            return spread.at((ends >> parts++ & 1) == 1 ? 1 : -1);
        }

        @Override
        public double ofCoupling(Spread spread) {
            return spread.at(stores.coupling);
        }

        @Override
        public double ofFilter(Spread spread) {
            return spread.at(stores.filters);
        }
    }
}
