package understudy.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class WorstCaseTest {
    private static final Input INPUT = new PulledUpInput(
            new Spread(5, 0.05), new Spread(2200, 0.05), 2, 3.8, FrontEnd.BARE);

    private static Rig rig(double fullScaleTolerance) {
        return new Rig(new AudioOutput(new Spread(2, fullScaleTolerance), new Spread(100, 0.2),
                Optional.of(new Spread(10e-6, 0.2)), false, 0),
                new Divider(new Spread(1000, 0.01), Optional.of(new Spread(3000, 0.01)), new Coupling.Direct()),
                new Lead(Spread.exactly(0.1), 1e-12));
    }

    @Test
    void everyCombinationOfEndsIsACorner() {
        // supply, pull-up, full scale, output resistance, series, shunt
        assertThat(WorstCase.corners(rig(0.1), INPUT)).hasSize(64).doesNotHaveDuplicates();
        assertThat(WorstCase.corners(rig(0), INPUT)).hasSize(32);
    }

    @Test
    void noDrawnBuildIsWorseThanTheWorstCorner() {
        double worst = WorstCase.marginVolts(rig(0.1), INPUT, Use.FULL);
        double[] least = {Double.POSITIVE_INFINITY};
        WorstCase.draw(rig(0.1), INPUT, 3000, 11, build -> least[0] = Math.min(least[0],
                new Connection(build.rig(), build.input()).levels(Use.FULL).marginVolts(build.input())));
        assertThat(worst).isLessThanOrEqualTo(least[0]);
        // of 6 parts, two or three of which matter, 3000 draws come near the corner: within a third of the way
        double nominal = new Connection(rig(0.1), INPUT).levels(Use.FULL).marginVolts(INPUT);
        assertThat(least[0] - worst).isLessThan((nominal - worst) / 2);
    }

    private static final List<Coupling> COUPLINGS = List.of(new Coupling.Direct(),
            new Coupling.Capacitor(new Spread(10e-6, 0.2)), new Coupling.Transformer(new Spread(0.5, 0.03),
                    new Spread(2, 0.3), new Spread(90, 0.1), new Spread(50, 0.1), 0.01));

    /** All kinds that are in reach, on all couplings: 2048 corners at most. */
    @ParameterizedTest
    @EnumSource(value = InputKind.class, names = {"RELUCTOR_.*", "PULLED_UP_5_V", "RESISTIVE"}, mode = EnumSource.Mode.MATCH_ANY)
    void goingFromPartToPartFindsTheWorstOfAllCorners(InputKind kind) {
        for (Coupling coupling : COUPLINGS) {
            Rig rig = new Rig(new AudioOutput(new Spread(1.4, 0.2), new Spread(100, 0.5), Optional.of(new Spread(10e-6, 0.2)),
                    false, 0), new Divider(new Spread(8200, 0.01), Optional.of(new Spread(15e3, 0.01)), coupling), Lead.USUAL);
            Use use = new Use(0.7, 0.4, 0.4);
            List<Levels> all = WorstCase.corners(rig, kind.usual()).stream().map(build -> build.connection().levels(use)).toList();
            for (ToDoubleFunction<Levels> measure : List.<ToDoubleFunction<Levels>>of(Levels::highVolts, Levels::lowVolts,
                    levels -> -levels.highVolts(), levels -> -levels.lowVolts())) {
                WorstCase.Build found = WorstCase.least(rig, kind.usual(), WorstCase.Stores.NOMINAL,
                        build -> measure.applyAsDouble(build.connection().levels(use)));
                assertThat(measure.applyAsDouble(found.connection().levels(use))).as(coupling.toString())
                        // the same sums: some corners differ by rounding only
                        .isCloseTo(all.stream().mapToDouble(measure).min().orElseThrow(), within(1e-9));
            }
        }
    }

    @Test
    void sameSeedSameDraws() {
        List<Object> once = new ArrayList<>();
        List<Object> again = new ArrayList<>();
        List<Object> other = new ArrayList<>();
        WorstCase.draw(rig(0.1), INPUT, 20, 5, once::add);
        WorstCase.draw(rig(0.1), INPUT, 20, 5, again::add);
        WorstCase.draw(rig(0.1), INPUT, 20, 6, other::add);
        assertThat(again).isEqualTo(once);
        assertThat(other).isNotEqualTo(once);
    }

    @Test
    void yieldOfOneUniformPartIsThePartOfItsRangeThatWill() {
        // full scale is 2 V +/- 10 %, uniform; the pin gets 2/3 of it and needs what 1.9 V give: 75 % of the range will
        Rig rig = new Rig(new AudioOutput(new Spread(2, 0.1), Spread.exactly(100), Optional.empty(), false, 0),
                new Divider(Spread.exactly(899.8), Optional.empty(), new Coupling.Direct()),
                new Lead(Spread.exactly(0.1), 1e-12));
        Input input = new ResistiveInput(Spread.exactly(2000), 1.9 * 2 / 3, FrontEnd.BARE);
        int builds = 4000;
        // three standard deviations of a count of 4000 with a chance of 3/4
        double off = 3 * Math.sqrt(0.75 * 0.25 / builds);
        assertThat(WorstCase.yield(rig, input, Use.FULL, builds, 3)).isCloseTo(0.75, within(off));
    }
}
