package understudy.hunt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import understudy.pattern.Hazard;
import understudy.refusal.Refused;
import understudy.refusal.Result;
import understudy.store.JobSamples;
import understudy.trace.Answer;
import understudy.trace.Detail;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.NextStep;
import understudy.trace.Numbered;
import understudy.trace.Place;
import understudy.trace.Subjects;

/** A hunt is led from question to question; what may hurt is never reached by any other way than the one meant for it. */
class HuntSessionTest {

    private static final Instant NOON = Instant.parse("2026-05-04T12:00:00Z");

    private static HuntEquipment equipment(Hunt hunt, List<Hazard> unread) {
        return new HuntEquipment(signal(hunt.subjects().suspect(), unread), hunt.subjects().reference().map(one -> signal(one, unread)),
                Optional.empty(), false);
    }

    private static HuntSignal signal(Subjects.Subject subject, List<Hazard> unread) {
        double speedHz = subject.speedHz();
        return new HuntSignal(speedHz, subject.frequencyHz(speedHz), subject.expected(speedHz), 0.4, "so fast", unread);
    }

    private static HuntSession begin(List<Hazard> unread) {
        Hunt hunt = Hunt.of(JobSamples.fresh("test"));
        return HuntSession.of(hunt, equipment(hunt, unread));
    }

    private static HuntSession say(HuntSession session, String typed) {
        return session.after(session.question().answer(typed).value().orElseThrow(), NOON);
    }

    private static HuntSession ticked() {
        HuntSession session = begin(List.of());
        while (session.hunt().next() instanceof NextStep.Caution) {
            session = say(session, "yes");
        }
        return session;
    }

    private static HuntSession played(HuntSession session) {
        return say(say(session, "0.1"), "");
    }

    /** The way of somebody whose vehicle has that one suspect bad. */
    @Property(tries = 24)
    void whateverIsBadIsFoundRepairedAndClosed(@ForAll @IntRange(min = 0, max = 5) int fault) {
        HuntSession session = begin(List.of());
        boolean repaired = false;
        for (int answers = 0; !session.isOver(); answers++) {
            assertThat(answers).as("it ends").isLessThan(300);
            String asked = session.question().sentence();
            boolean arrives = repaired || session.playing().filter(place -> place.onReference() || fault <= place.point()).isPresent();
            String typed = asked.startsWith("Caution") ? "yes" : asked.startsWith("Volts") ? "0.1"
                    : asked.startsWith("What does the display") ? arrives ? "40" : "nothing"
                    : asked.startsWith("What did you repair") ? "new pins" : asked.matches("[a-z]+:") ? "measured, and fine" : "";
            repaired |= asked.startsWith("What did you repair");
            session = say(session, typed);
        }
        assertThat(session.left()).isFalse();
        assertThat(session.hunt().finding().suspects()).singleElement().satisfies(suspect -> assertThat(suspect.index()).isEqualTo(fault));
        assertThat(session.hunt().closing()).isPresent();
        HuntSession over = session;
        assertThatThrownBy(() -> over.after(new HuntInput.Where(), NOON)).isInstanceOf(Refused.class);
    }

    @Example
    void onlyAnEmptyLinePlays() {
        HuntSession clipped = say(ticked(), "0.1");
        assertThat(clipped.question().sentence()).startsWith("Clip on");
        for (String typed : List.of("no", "no, wait", "yes", "0.2", "nothing", "go", "?", "-", "enter", "Enter", "done")) {
            assertThat(clipped.question().answer(typed).value()).as(typed).isEmpty();
        }
        assertThat(clipped.playing()).isEmpty();
        HuntSession playing = say(clipped, "");
        assertThat(playing.playing()).contains(new Place(true, 0));
        assertThat(playing.levelPart()).isEqualTo(1);
    }

    @Example
    void aPinWithTooMuchOnItIsNotClippedOnTo() {
        HuntSession session = say(ticked(), "13.9");
        assertThat(session.question().sentence()).startsWith("Volts on the pin");
        assertThat(session.remarks()).first().asString().contains("REFUSED");
        assertThat(say(session, "0.1").question().sentence()).startsWith("Clip on");
    }

    /** A tick from another day, or for a rehearsal, does not let this signal out. */
    @Example
    void cautionsThatNobodyAgreedToAreAskedBeforeItPlays() {
        Hunt hunt = ticked().hunt();
        HuntSession session = say(say(HuntSession.of(hunt, equipment(hunt, List.of(Hazard.UNCHECKED))), "0.1"), "");
        assertThat(session.playing()).isEmpty();
        assertThat(session.question().sentence()).startsWith("Caution 1 of 1");
        assertThat(say(session, "no").playing()).isEmpty();
        HuntSession agreed = say(session, "yes");
        assertThat(agreed.playing()).isPresent();
        assertThat(agreed.hunt().events()).last().extracting(Numbered::entry).isEqualTo(new Entry.Cautioned(List.of(Hazard.UNCHECKED)));
        assertThat(say(say(say(agreed, "40"), "0.1"), "").playing()).as("once a session").isPresent();
    }

    @Example
    void levelAndVoltsBelongToOneReading() {
        HuntSession playing = say(say(played(ticked()), "level 30"), "volts 0.06 V");
        assertThat(playing.levelPart()).isEqualTo(0.3);
        HuntSession read = say(playing, "40");
        Entry.Injected injected = (Entry.Injected) read.hunt().events().get(read.hunt().events().size() - 1).entry();
        assertThat(injected.levelPart()).isEqualTo(0.3);
        assertThat(injected.clipPart().orElseThrow()).as("of 30 % of 0.4 V").isCloseTo(0.06 / 0.12, org.assertj.core.data.Offset.offset(1e-12));
        assertThat(played(read).levelPart()).isEqualTo(1);
    }

    @Example
    void aSignalThatIsLostCountsForNothing() {
        HuntSession playing = played(ticked());
        HuntSession lost = playing.after(new HuntInput.SignalLost("the device is gone"), NOON);
        assertThat(lost.hunt().events()).isEqualTo(playing.hunt().events());
        assertThat(lost.playing()).isEmpty();
        assertThat(say(lost, "").playing()).as("the clips are still on").isPresent();
        HuntSession noting = say(playing, "note");
        assertThat(noting.playing()).as("it plays on while a note is typed").isPresent();
        assertThat(noting.after(new HuntInput.SignalLost("gone"), NOON).playing()).isEmpty();
    }

    @Example
    void whatWasWrittenDownCanBeSetRight() {
        HuntSession session = say(say(ticked(), "correct who the evening class"), "correct complaint");
        assertThat(session.question().sentence()).contains("complaint").contains("drops to zero on rough ground");
        session = say(session, "where it drops");
        assertThat(session.hunt().job().who()).isEqualTo("the evening class");
        assertThat(session.hunt().job().complaint()).isEqualTo("where it drops");
        assertThat(session.question().sentence()).as("the question is what it was").isEqualTo(ticked().question().sentence());
        HuntSession now = session;
        assertThatThrownBy(() -> say(now, "correct remark done")).isInstanceOf(Refused.class).hasMessageContaining("not closed");
        assertThatThrownBy(() -> say(now, "withdraw 2 a slip")).isInstanceOf(Refused.class).hasMessageContaining("correct it once more");
        assertThat(now.hunt().written(Detail.REMARK)).isEmpty();
    }

    /** Whatever is typed, a signal plays only behind the cautions, at a pin that was measured since, on nothing but Enter. */
    @Property(tries = 1500)
    void anyWordsLeadFromStateToStateAndNeverAroundAGate(@ForAll @From("sayings") List<String> sayings) {
        HuntSession session = begin(List.of());
        for (String typed : sayings) {
            if (session.isOver()) {
                return;
            }
            assertThat(session.question().answers().meanings()).isNotEmpty();
            assertThat(session.question().answer("?").value()).as("asking why is no answer").isEmpty();
            Result<HuntInput> input = session.question().answer(typed);
            if (input.value().isEmpty()) {
                assertThat(input.problems()).isNotEmpty();
                continue;
            }
            HuntSession after;
            try {
                after = session.after(input.value().get(), NOON);
            } catch (Refused refused) {
                continue; // nothing has changed
            }
            List<Numbered> before = session.hunt().events();
            assertThat(after.hunt().job().events().subList(0, before.size())).as("only ever added to")
                    .isEqualTo(session.hunt().job().events());
            if (after.playing().isPresent() && !after.playing().equals(session.playing())) {
                assertThat(typed.isBlank() || typed.equals("yes")).as("\"%s\" makes it play", typed).isTrue();
                assertThat(after.hunt().next()).isNotInstanceOf(NextStep.Caution.class);
                assertThat(after.hunt().measured(after.playing().get())).isTrue();
            }
            assertThat(after.hunt().events().size() - before.size()).isBetween(0, 1);
            assertThat(after.hunt().events()).allSatisfy(event -> assertThat(event.toString()).doesNotContain("words=?"));
            session = after;
        }
    }

    @Provide
    Arbitrary<List<String>> sayings() {
        Arbitrary<String> forward = Arbitraries.of("yes", "", "0.1", "40", "nothing");
        Arbitrary<String> sideways = Arbitraries.of("no", "?", "where", "other", "other 2", "other 99", "again", "again it slipped",
                "withdraw 1 a slip", "withdraw", "undo 3", "note", "note seen at noon", "close", "level 30", "level 0", "volts 0.1",
                "400", "moves", "1", "erratic", "go on", "13.9", "not tried", "correct who me", "correct vehicle", "stop it");
        return Arbitraries.frequencyOf(net.jqwik.api.Tuple.of(6, forward), net.jqwik.api.Tuple.of(3, sideways),
                net.jqwik.api.Tuple.of(1, Arbitraries.strings().ofMaxLength(6))).list().ofMinSize(10).ofMaxSize(60);
    }

    @Example
    void aModuleIsAskedProofByProof() {
        HuntSession session = ticked();
        while (!session.question().sentence().matches("[a-z]+:")) {
            String asked = session.question().sentence();
            boolean reference = session.playing().filter(Place::onReference).isPresent();
            session = say(session, asked.startsWith("Volts") ? "0.1" : asked.startsWith("What does") ? reference ? "40" : "nothing" : "");
        }
        session = say(session, "no, 2 V");
        assertThat(session.hunt().events()).last().extracting(Numbered::entry).isInstanceOf(Entry.Noted.class);
        while (session.question().sentence().matches("[a-z]+:")) {
            session = say(session, "");
        }
        assertThat(session.question().sentence()).startsWith("Still to be proven: volts, polarity");
        assertThat(session.hunt().proven()).isEmpty();
        assertThat(session.hunt().standing()).filteredOn(event -> event.entry() instanceof Entry.Injected injected
                && injected.answer().kind() == Answer.Kind.NOTHING).isNotEmpty();
    }
}
