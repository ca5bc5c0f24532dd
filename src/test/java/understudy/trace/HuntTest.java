package understudy.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static understudy.trace.TestJobs.NOON;
import static understudy.trace.TestJobs.bad;
import static understudy.trace.TestJobs.cautioned;
import static understudy.trace.TestJobs.good;
import static understudy.trace.TestJobs.inject;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import understudy.pattern.Hazard;
import understudy.refusal.Refused;

/** A job is led from the cautions to the closing, and nothing that matters can be skipped. */
class HuntTest {

    private static final Place REFERENCE = new Place(true, 0);

    private static Hunt fresh() {
        return cautioned(TestJobs.alone());
    }

    private static Answer right(Hunt hunt, Place place) {
        Subjects.Subject subject = hunt.subjects().of(place);
        return Answer.value(subject.expected(subject.speedHz()).value());
    }

    /** Good where the tunnel connector's segment is passed, bad before it: twice each, since readings can be wrong. */
    private static Hunt tunnelConvicted() {
        Hunt hunt = fresh();
        while (!hunt.finding().decided()) {
            hunt = hunt.finding().decided() ? hunt : bad(good(hunt, 2), 1);
        }
        return hunt;
    }

    @Test
    void theCautionsComeFirst() {
        Hunt hunt = Hunt.of(TestJobs.alone());
        assertThat(hunt.next()).isInstanceOfSatisfying(NextStep.Caution.class,
                caution -> assertThat(caution.hazards()).isNotEmpty());
        assertThatThrownBy(() -> hunt.after(NOON, new Entry.PinMeasured(new Place(false, 0), 0)))
                .isInstanceOf(Refused.class).hasMessageContaining("cautions");
    }

    @Test
    void theReferenceCircuitsOwnHazardsAreAmongTheCautions() {
        assertThat(Hunt.of(TestJobs.alone()).hazards()).contains(Hazard.ROAD_SPEED).doesNotContain(Hazard.WHEEL_SPEED);
        assertThat(Hunt.of(TestJobs.withReference()).hazards()).contains(Hazard.ROAD_SPEED, Hazard.WHEEL_SPEED)
                .containsAll(Hazard.general()).doesNotHaveDuplicates();
    }

    @Test
    void theMethodIsProvenOnTheReferenceCircuitFirst() {
        Hunt hunt = cautioned(TestJobs.withReference());
        assertThat(hunt.next()).isInstanceOfSatisfying(NextStep.Inject.class, inject -> {
            assertThat(inject.place()).isEqualTo(REFERENCE);
            assertThat(inject.purpose()).isEqualTo(NextStep.Purpose.METHOD);
        });
        Hunt clipped = hunt.after(NOON, new Entry.PinMeasured(new Place(false, 0), 0));
        assertThatThrownBy(() -> clipped.after(NOON, TestJobs.injected(clipped, new Place(false, 0), Answer.value(40))))
                .isInstanceOf(Refused.class).hasMessageContaining("reference");

        Hunt failed = inject(hunt, REFERENCE, Answer.of(Answer.Kind.NOTHING));
        assertThat(failed.methodProven()).isFalse();
        assertThat(failed.next()).isInstanceOfSatisfying(NextStep.Inject.class, i -> assertThat(i.place()).isEqualTo(REFERENCE));

        Hunt proven = inject(failed, REFERENCE, right(failed, REFERENCE));
        assertThat(proven.methodProven()).isTrue();
        assertThat(proven.next()).isInstanceOfSatisfying(NextStep.Inject.class,
                i -> assertThat(i.purpose()).isEqualTo(NextStep.Purpose.HUNT));

        Hunt without = failed.after(NOON, new Entry.WentOn("no other circuit on this bench"));
        assertThat(without.methodProven()).isFalse();
        assertThat(without.next()).isInstanceOfSatisfying(NextStep.Inject.class,
                i -> assertThat(i.purpose()).isEqualTo(NextStep.Purpose.HUNT));
        assertThat(Unproven.of(without)).anyMatch(sentence -> sentence.contains("not proven on a circuit that works"));
    }

    @Test
    void whatTheReferenceReadsSaysNothingOfTheSuspectCircuit() {
        Hunt hunt = cautioned(TestJobs.withReference());
        Hunt after = inject(hunt, REFERENCE, right(hunt, REFERENCE));
        IntStream.range(0, hunt.odds().suspects()).forEach(suspect ->
                assertThat(after.odds().probability(suspect)).isEqualTo(hunt.odds().probability(suspect)));
    }

    @Test
    void everyClipOnNeedsAMeasuredPin() {
        Hunt hunt = fresh();
        Place first = new Place(false, 0);
        Place second = new Place(false, 1);
        assertThatThrownBy(() -> hunt.after(NOON, TestJobs.injected(hunt, first, Answer.value(40))))
                .isInstanceOf(Refused.class).hasMessageContaining("was not measured");
        Hunt elsewhere = hunt.after(NOON, new Entry.PinMeasured(first, 0.1)).after(NOON, new Entry.PinMeasured(second, 0.1));
        assertThat(elsewhere.measured(second)).isTrue();
        assertThat(elsewhere.measured(first)).as("the clips moved on").isFalse();
        Hunt live = hunt.after(NOON, new Entry.PinMeasured(first, 12.4));
        assertThatThrownBy(() -> live.after(NOON, TestJobs.injected(live, first, Answer.value(40))))
                .isInstanceOf(Refused.class).hasMessageContaining("more lies on it than the input allows");
    }

    /** By Bayes' rule on paper: the weight of each suspect times what a good reading at point 2 has under it. */
    @Test
    void theOddsAreThoseOfBayesRule() {
        Hunt hunt = good(fresh(), 2);
        Circuit circuit = hunt.circuit();
        List<Suspect> suspects = circuit.suspects();
        double[] weights = suspects.stream().mapToDouble(s -> s.odds()
                * (s.index() <= 2 ? 1 - circuit.wronglyBad() : circuit.wronglyGood())).toArray();
        double sum = IntStream.range(0, weights.length).mapToDouble(i -> weights[i]).sum();
        for (int i = 0; i < weights.length; i++) {
            assertThat(hunt.odds().probability(i)).isCloseTo(weights[i] / sum, within(1e-12));
        }
    }

    @Test
    void aWithdrawnStepCountsNoMoreAndStaysOnRecord() {
        Hunt hunt = bad(fresh(), 1);
        Hunt withdrawn = hunt.after(NOON, new Entry.Withdrawn(3, "the clip had slipped"));
        assertThat(withdrawn.odds().probability(0)).isEqualTo(fresh().odds().probability(0));
        assertThat(withdrawn.events()).hasSize(4);
        assertThat(withdrawn.events().get(2).standing()).isFalse();
        assertThatThrownBy(() -> withdrawn.after(NOON, new Entry.Withdrawn(3, "again"))).hasMessageContaining("withdrawn already");
        assertThatThrownBy(() -> withdrawn.after(NOON, new Entry.Withdrawn(9, "what"))).hasMessageContaining("there are 1 to 4");
    }

    @Test
    void readingsThatContradictEachOtherAreNamed() {
        Hunt hunt = bad(good(fresh(), 1), 3); // good from point 1 on, but bad from point 3, nearer to the module
        assertThat(hunt.clashes()).containsExactly(new Clash(3, 5));
        assertThat(bad(good(fresh(), 3), 1).clashes()).isEmpty();
    }

    @Test
    void aCollapsedSignalDoesNotCount() {
        Hunt hunt = fresh().after(NOON, new Entry.PinMeasured(new Place(false, 1), 0));
        Entry.Injected bare = TestJobs.injected(hunt, new Place(false, 1), Answer.of(Answer.Kind.NOTHING));
        Hunt after = hunt.after(NOON, new Entry.Injected(bare.place(), bare.speedHz(), bare.frequencyHz(), 1, bare.expected(),
                bare.answer(), Optional.of(0.1), Optional.empty()));
        assertThat(after.odds().probability(0)).isEqualTo(hunt.odds().probability(0));
        assertThat(Judgement.of(bare).verdict()).isEqualTo(Verdict.BAD);
    }

    @Test
    void whatWasMovedWhenTheDisplayWentIsTheLikelierOne() {
        Hunt hunt = fresh().after(NOON, new Entry.PinMeasured(new Place(false, 0), 0));
        Entry.Injected bare = TestJobs.injected(hunt, new Place(false, 0), Answer.of(Answer.Kind.COMES_AND_GOES));
        Hunt moved = hunt.after(NOON, new Entry.Injected(bare.place(), bare.speedHz(), bare.frequencyHz(), 1, bare.expected(),
                bare.answer(), Optional.empty(), Optional.of(3)));
        Hunt notKnown = hunt.after(NOON, bare);
        assertThat(moved.odds().probability(3)).isGreaterThan(notKnown.odds().probability(3));
        assertThat(moved.finding().suspects().get(0).index()).isEqualTo(3);
        assertThatThrownBy(() -> hunt.after(NOON, new Entry.Injected(bare.place(), bare.speedHz(), bare.frequencyHz(), 1,
                bare.expected(), bare.answer(), Optional.empty(), Optional.of(0)))).hasMessageContaining("sensor's side");
    }

    @Test
    void aConvictedSegmentIsRepairedProvenAndClosed() {
        Hunt convicted = tunnelConvicted();
        assertThat(convicted.finding().suspects()).extracting(Suspect::index).containsExactly(2);
        assertThat(convicted.next()).isInstanceOf(NextStep.Repair.class);
        Hunt repaired = convicted.after(NOON, new Entry.Repaired("new terminals"));
        assertThat(repaired.next()).isInstanceOfSatisfying(NextStep.Inject.class, i -> {
            assertThat(i.purpose()).isEqualTo(NextStep.Purpose.REPAIR);
            assertThat(i.place().point()).isZero();
        });
        Hunt proven = good(repaired, 0);
        assertThat(proven.repairProven()).isTrue();
        assertThat(proven.next()).isInstanceOf(NextStep.Close.class);
        assertThat(proven.finding()).as("what was convicted is still said").isEqualTo(convicted.finding());
        Hunt closed = proven.after(NOON, new Entry.Closed("works", Optional.of(true)));
        assertThat(closed.next()).isInstanceOf(NextStep.Ended.class);
        assertThatThrownBy(() -> closed.after(NOON, new Entry.Noted("late"))).hasMessageContaining("closed");
    }

    @Test
    void aRepairThatDoesNotHelpSendsTheHuntOn() {
        Hunt repaired = tunnelConvicted().after(NOON, new Entry.Repaired("new terminals"));
        Hunt still = bad(repaired, 0);
        assertThat(still.repairProven()).isFalse();
        assertThat(still.odds().probability(2)).isLessThan(tunnelConvicted().odds().probability(2));
        assertThat(still.finding().decided()).isFalse();
    }

    @Test
    void nothingIsRepairedBeforeItIsConvicted() {
        assertThatThrownBy(() -> bad(fresh(), 1).after(NOON, new Entry.Repaired("the loom")))
                .isInstanceOf(Refused.class).hasMessageContaining("nothing is convicted");
    }

    @Test
    void theModuleIsCondemnedOnlyAfterAllThatMustBeProven() {
        Hunt hunt = fresh();
        for (int i = 0; i < 4 && !hunt.finding().decided(); i++) {
            hunt = bad(hunt, 4);
        }
        assertThat(hunt.finding().is(Suspect.Side.MODULE)).isTrue();
        for (Proof proof : Proof.values()) {
            assertThat(hunt.next()).isInstanceOfSatisfying(NextStep.Prove.class,
                    prove -> assertThat(prove.outstanding()).contains(proof));
            Hunt early = hunt;
            assertThatThrownBy(() -> early.after(NOON, new Entry.Repaired("another module")))
                    .hasMessageContaining(proof.key());
            hunt = hunt.after(NOON, new Entry.Proven(proof, "measured"));
        }
        assertThat(hunt.next()).isInstanceOf(NextStep.Repair.class);
    }

    @Test
    void aSoundCircuitPointsAtTheSensorsSide() {
        Hunt hunt = fresh();
        for (int i = 0; i < 6 && !hunt.finding().decided(); i++) {
            hunt = good(hunt, 0);
        }
        assertThat(hunt.finding().is(Suspect.Side.SENSOR)).isTrue();
        assertThat(Unproven.of(hunt)).anyMatch(sentence -> sentence.contains("not lowered"));
    }
}
