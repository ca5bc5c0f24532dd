package understudy.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import understudy.pattern.PatternLibrary;
import understudy.pattern.Pattern;
import understudy.pattern.Profile;
import understudy.reading.Reading;
import understudy.reading.ReadingReader;
import understudy.refusal.Location;
import understudy.refusal.Refused;
import understudy.refusal.Result;
import understudy.trace.Answer;

class SweepStateTest {

    /** 0.5 km/h for each Hz: at 40 Hz 20 km/h are due. */
    private static final Reading DISPLAY = ReadingReader.read(
            "shows: vehicle speed, unit: km/h, pulses-per-km: 7200, tolerance: 10 %, step: 1 km/h", Location.named("test")).value().orElseThrow();
    private static final Pattern SINE = PatternLibrary.open().find("sine").value().orElseThrow();
    private static final Instant NOON = Instant.parse("2026-05-04T12:00:00Z");

    private static SweepState begin() {
        SweptCircuit circuit = new SweptCircuit("sine", "A sine", SINE, SINE.outputs().get(0), DISPLAY, "a test", Optional.empty(), Optional.empty());
        List<SweepStop> stops = List.of(stop(40), stop(80), stop(120));
        return SweepState.of(circuit, stops, List.of());
    }

    private static SweepStop stop(double hz) {
        return new SweepStop(hz, List.of(new Profile.Ramp(Double.NaN, hz, 1)), 1);
    }

    private static SweepState say(SweepState state, String typed) {
        return state.after(state.question().answer(typed).value().orElseThrow(), NOON);
    }

    @Example
    void aSweepIsReadFromEndToEnd() {
        SweepState state = begin();
        assertThat(state.expected().value()).isEqualTo(20);
        state = say(state, "20");
        assertThat(state.rows()).extracting(SweepRow::seen).containsExactly(Optional.of(Answer.value(20)));
        state = say(state, "nothing");
        state = say(state, "back");
        assertThat(state.rows()).hasSize(1);
        state = say(state, "");
        state = say(state, "600");
        assertThat(state.rows()).as("600 for 60 is asked for once more").hasSize(2);
        assertThat(state.question().sentence()).contains("600").endsWith("yes or no:");
        assertThat(say(state, "no").rows()).hasSize(2);
        state = say(state, "yes");
        assertThat(state.isOver()).isTrue();
        assertThat(state.rows()).extracting(SweepRow::verdict).element(1).isEqualTo("skipped");
        SweepState over = state;
        assertThatThrownBy(() -> over.after(new SweepInput.Skip(), NOON)).isInstanceOf(Refused.class);
    }

    @Example
    void thereIsNoWayBackFromTheFirst() {
        assertThatThrownBy(() -> say(begin(), "back")).isInstanceOf(Refused.class).hasMessageContaining("this is the first speed");
    }

    /** Whatever is typed: it is refused, or the next state is one in which something is asked, or the end. */
    @Property(tries = 500)
    void anyWordsLeadFromStateToState(@ForAll @From("sayings") List<String> sayings) {
        SweepState state = begin();
        for (String typed : sayings) {
            if (state.isOver()) {
                break;
            }
            assertThat(state.question().answers().meanings()).isNotEmpty();
            assertThat(state.question().answer("?").value()).as("asking why is no answer").isEmpty();
            Result<SweepInput> input = state.question().answer(typed);
            int before = state.rows().size();
            if (input.value().isPresent()) {
                boolean atFirst = before == 0 && input.value().get() instanceof SweepInput.Back;
                if (atFirst) {
                    continue;
                }
                SweepState after = state.after(input.value().get(), NOON);
                assertThat(after.rows().size() - before).isBetween(-1, 1);
                if (after.rows().size() > before && !after.isOver()) {
                    assertThat(say(after, "back").rows()).as("undone").isEqualTo(state.rows());
                }
                state = after;
            } else {
                assertThat(input.problems()).isNotEmpty();
            }
        }
        assertThat(state.rows().size()).isLessThanOrEqualTo(state.stops().size());
    }

    @Provide
    Arbitrary<List<String>> sayings() {
        return Arbitraries.oneOf(Arbitraries.of("20", "40", "200", "600", "yes", "no", "", "back", "nothing", "erratic", "stop", "12 mph", "?"),
                Arbitraries.strings().ofMaxLength(8)).list().ofMaxSize(12);
    }
}
