package understudy.preflight;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.pattern.Signal;
import understudy.pattern.Tone;
import understudy.refusal.Wording;
import understudy.rig.Arming;
import understudy.rig.AudioOutput;
import understudy.rig.Coupling;
import understudy.rig.Divider;
import understudy.rig.FrontEnd;
import understudy.rig.Input;
import understudy.rig.InputKind;
import understudy.rig.Lead;
import understudy.rig.PulledUpInput;
import understudy.rig.ReluctorInput;
import understudy.rig.ReluctorInput.Edge;
import understudy.rig.Rig;
import understudy.rig.Spread;
import understudy.rig.WorstCase;

/** What is said to hold for all builds, held to builds that are drawn by chance, and to every corner there is. */
class CornersTest {

    private static final int BUILDS = 150;

    /**
     * @param swingVolts that the comparator sees, about
     * @param ohmsPart   by which the resistances around a capacitor may be off, about
     */
    private record Case(Setup setup, double swingVolts, double ohmsPart) {}

    private static Rig rig(double volts, double outputFarads, double seriesOhms, double shuntOhms, Coupling coupling) {
        return new Rig(new AudioOutput(new Spread(volts, 0.2), new Spread(100, 0.5), Optional.of(new Spread(outputFarads, 0.2)),
                false, 0), new Divider(new Spread(seriesOhms, 0.01), Optional.of(new Spread(shuntOhms, 0.01)), coupling), Lead.USUAL);
    }

    private static final List<Case> CASES = List.of(
            // a coil whose volts rise with speed, on fixed thresholds
            new Case(Bench.setup(Bench.pattern(Bench.coil(12, 1, 0.3, 0.5, 1), 3, 10, 40),
                    rig(1.4, 10e-6, 10e3, 11e3, new Coupling.Direct()), InputKind.RELUCTOR_HYSTERESIS.usual()), 1, 0.02),
            // a pull-up that the box holds at the middle, with teeth that run into each other
            new Case(Bench.setup(Bench.pattern(Bench.hall(12, 1, 2.2), 200, 400, 1200),
                    rig(4.2, 10e-6, 3e3, 18e3, new Coupling.Capacitor(new Spread(22e-6, 0.2))), new PulledUpInput(
                            new Spread(5, 0.05), new Spread(15e3, 0.05), 2, 3.8, FrontEnd.BARE)), 4.4, 0.06),
            // a filter that takes fast signals away
            new Case(Bench.setup(Bench.pattern(Bench.tone(Tone.Shape.SINE, 0.5, 0.6), 100, 250, 2000),
                    rig(1.4, 10e-6, 10e3, 11e3, new Coupling.Direct()), new ReluctorInput(false, new Spread(1e6, 0.2),
                            Spread.exactly(0), new Spread(1e6, 0.2), 0, new FrontEnd(new Spread(15e3, 0.05),
                                    Optional.of(new Spread(47e-9, 0.2)), Optional.empty()),
                            new Arming.Hysteresis(-0.16, 0.16), Edge.FALLING, 12e3)), 1.2, 0.06),
            // droop that takes slow ones, through a transformer that lifts
            new Case(Bench.setup(Bench.pattern(Bench.tone(Tone.Shape.SINE, 0.5, 0.8), 5, 60, 200),
                    rig(1.4, 10e-6, 2e3, 30e3, new Coupling.Transformer(new Spread(2, 0.03), new Spread(2, 0.3),
                            new Spread(90, 0.1), new Spread(300, 0.1), 10)), InputKind.RELUCTOR_ADAPTIVE_PAIR.usual())
                    .withCorrection(false), 1.6, 0.08));

    private static Preflight range(Case one) {
        return Preflight.rangeOnly(one.setup, one.setup.pattern().speed().defaultHz());
    }

    /** Of the range that is said to hold for all builds, those ends that are not the pattern's own. */
    private static List<Double> ends(Case one) {
        Preflight found = range(one);
        List<Double> ends = new ArrayList<>();
        double low = found.low().orElseThrow().speedHz();
        double high = found.high().orElseThrow().speedHz();
        if (low != one.setup.pattern().speed().fromHz()) {
            ends.add(low);
        }
        if (high != one.setup.pattern().speed().toHz()) {
            ends.add(high);
        }
        assertThat(ends).as("ends that the circuit makes").isNotEmpty();
        return ends;
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void noDrawnBuildDoesWorseThanTheWorstCorner(int which) {
        Case one = CASES.get(which);
        List<Double> speeds = new ArrayList<>(ends(one));
        speeds.add(one.setup.pattern().speed().defaultHz());
        SpeedSearch sweep = new SpeedSearch(one.setup, one.setup.pattern().speed().defaultHz());
        for (double hz : speeds) {
            AtSpeed said = sweep.at(hz);
            CycleEvents events = CycleEvents.of(one.setup);
            Played played = Played.at(one.setup, events, hz);
            double[] least = {Double.POSITIVE_INFINITY};
            boolean[] decoded = {true};
            WorstCase.draw(one.setup.rig(), one.setup.input(), BUILDS, 7, build -> {
                Decoding judged = Decoding.of(one.setup.withBuilt(build), events, played, hz);
                least[0] = Math.min(least[0], judged.marginVolts());
                decoded[0] &= judged.isDecoded();
            });
            // The corners have the resistors at what is worst for the swing, which need not be worst for the time constant
            // of what couples or filters: that may be off by ohmsPart more, and what droops or is filtered away, at most all
            // of the swing to one side, by as much.
            double slack = one.ohmsPart * one.swingVolts / 2;
            assertThat(least[0]).as("at " + hz + " Hz").isGreaterThan(said.worst().marginVolts() - slack);
            assertThat(decoded[0]).as("all drawn builds at " + hz + " Hz").isTrue();
            // and it is no idle fear: chance alone goes half of the way from nominal to worst
            double nominal = said.nominal().marginVolts();
            assertThat(nominal - least[0]).isGreaterThan((nominal - said.worst().marginVolts()) / 2);
        }
    }

    /** Full scale, three or four of the rig's resistances, and those of the input: 256 corners at most, times the stores' ends. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void theRangeIsThatOfEveryCorner(int which) {
        Case one = CASES.get(which);
        boolean filtered = one.setup.input().frontEnd().filterFarads().isPresent();
        for (double end : ends(one)) {
            boolean low = end < one.setup.pattern().speed().defaultHz();
            // ends are told within 1 %
            assertThat(everyCornerDecodes(one.setup, end, filtered)).as("at " + end).isTrue();
            assertThat(everyCornerDecodes(one.setup, low ? end / 1.01 : end * 1.01, filtered)).as("beyond " + end).isFalse();
        }
    }

    private static boolean everyCornerDecodes(Setup setup, double hz, boolean filtered) {
        CycleEvents events = CycleEvents.of(setup);
        Played played = Played.at(setup, events, hz);
        for (WorstCase.Build corner : WorstCase.corners(setup.rig(), setup.input())) {
            for (int coupling = -1; coupling <= 1; coupling += 2) {
                for (int filter = filtered ? -1 : 1; filter <= 1; filter += 2) {
                    WorstCase.Build build = new WorstCase.Build(
                            withStores(corner.rig(), 1 + 0.2 * coupling), withFilter(corner.input(), 1 + 0.2 * filter));
                    if (!Decoding.of(setup.withBuilt(build), events, played, hz).isDecoded()) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    private static Rig withStores(Rig rig, double times) {
        AudioOutput out = rig.output();
        Divider divider = rig.divider();
        Coupling coupling = divider.coupling() instanceof Coupling.Capacitor c
                ? new Coupling.Capacitor(Spread.exactly(times * c.farads().nominal())) : divider.coupling();
        return new Rig(new AudioOutput(out.fullScaleVolts(), out.outputOhms(),
                out.couplingFarads().map(c -> Spread.exactly(times * c.nominal())), out.inverted(), 0),
                new Divider(divider.seriesOhms(), divider.shuntOhms(), coupling), rig.lead());
    }

    private static Input withFilter(Input input, double times) {
        if (!(input instanceof ReluctorInput r)) {
            return input;
        }
        FrontEnd front = new FrontEnd(r.frontEnd().seriesOhms(),
                r.frontEnd().filterFarads().map(c -> Spread.exactly(times * c.nominal())), Optional.empty());
        return new ReluctorInput(r.differential(), r.inputOhms(), r.biasVolts(), r.biasOhms(), r.referenceVolts(), front,
                r.arming(), r.timing(), r.mostSensorOhms());
    }

    @Test
    void whereAllPartsAreExactThereIsNothingElseToJudge() {
        Setup exact = Bench.setup(Bench.coil(12, 1, 0.3, 2, 2), Bench.rig(20), Bench.hysteresis(0.3, Edge.FALLING));
        assertThat(Corners.of(exact)).isEmpty();
        Preflight found = Preflight.rangeOnly(exact, 10);
        assertThat(found.toleranced()).isFalse();
        assertThat(found.chosen().worst()).isEqualTo(found.chosen().nominal());
        assertThat(found.summary()).doesNotContain("worst");
    }

    /** A sine's flux in the core is its peak over its frequency, in volts times seconds over 2 pi. */
    @Test
    void aCoreThatCannotCarryTheVoltsEndsTheRange() {
        double carried = 0.8 / (2 * Math.PI * 40); // 0.8 V peak down to 40 Hz
        Signal tone = Bench.tone(Tone.Shape.SINE, 0.5, 0.8);
        for (double ratio : new double[] {0.5, 1, 3}) {
            Rig rig = new Rig(new AudioOutput(Spread.exactly(10), Spread.exactly(1), Optional.empty(), false, 0),
                    new Divider(Spread.exactly(1), Optional.empty(), new Coupling.Transformer(Spread.exactly(ratio),
                            Spread.exactly(1000), Spread.exactly(1), Spread.exactly(1e-3), carried)),
                    new Lead(Spread.exactly(1e-3), 1e-12));
            Setup setup = Bench.setup(Bench.pattern(tone, 10, 100, 200), rig, Bench.hysteresis(0.1, Edge.RISING));
            Preflight found = Preflight.of(setup.withLevel(ratio), 100, part -> {});
            RangeEnd low = found.low().orElseThrow();
            // some 3 ohm before 9 kohm over the ratio's square: 0.3 % at 3; bisected to 0.4 %
            assertThat(low.speedHz() / 40).isBetween(0.99, 1.01);
            assertThat(low.limit()).contains(Limit.CORE);
            assertThat(low.widenings()).extracting(wider -> wider.remedy().text(Wording.NEUTRAL))
                    .contains("a transformer that carries ten times the volts at the same frequency");
            assertThat(low.widenings()).filteredOn(wider -> wider.remedy().text(Wording.NEUTRAL).startsWith("half the volts"))
                    .singleElement().satisfies(wider -> assertThat(wider.speedHz() / 20).isBetween(0.99, 1.01));
            assertThat(found.overview().get(0).worst().verdict()).isEqualTo(DecodingVerdict.SATURATED);
        }
    }
}
