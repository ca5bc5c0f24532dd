package understudy.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;

/** A rig and an input as they may really be, every part somewhere within its tolerance. */
public final class WorstCase {
    /** More toleranced parts than any circuit of the model has. */
    private static final int MOST_PARTS = 16;

    private WorstCase() {}

    /** One of the ways in which the parts may turn out; all tolerances are zero. */
    public record Build(Rig rig, Input input) {}

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
        Corner count = new Corner(0);
        build(rig, input, count);
        if (count.parts > MOST_PARTS) {
            throw new IllegalStateException("too many parts: " + count.parts);
        }
        return 1L << count.parts;
    }

    /** One of them, counted from 0; the same number has the same parts at the same ends while the same parts are there. */
    static Build corner(Rig rig, Input input, long ends) {
        return build(rig, input, new Corner(ends));
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
            public double ofStore(Spread spread) {
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
        return new Connection(build.rig, build.input).levels(use).marginVolts(build.input);
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
        private int parts;

        Corner(long ends) {
            this.ends = ends;
        }

        @Override
        public double of(Spread spread) {
            if (spread.tolerance() == 0 || spread.nominal() == 0) {
                return spread.nominal();
            }
            return spread.at((ends >> parts++ & 1) == 1 ? 1 : -1);
        }

        @Override
        public double ofStore(Spread spread) {
            return spread.nominal();
        }
    }
}
