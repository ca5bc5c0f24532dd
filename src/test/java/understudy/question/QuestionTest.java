package understudy.question;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.quantity.Range;
import understudy.quantity.Unit;

class QuestionTest {

    private static final Question<Boolean> SURE = Question.yesNo("Close it?", "It can't be opened again.", "it closes", "it stays");
    private static final Question<Double> VOLTS = new Question<>("Volts on the pin?", "Too many harm the module.",
            new Answers.Number(new Range(-1, 5, Unit.VOLT), "what the meter shows"), Optional.empty());
    private static final Question<String> SENSOR = new Question<>("Does it work?", "It proves the repair.", new Answers.Choice<>(
            List.of(new Answers.Option<>("works", List.of("yes", "y"), "it reads right"),
                    new Answers.Option<>("untried", List.of("not tried", "not"), "nobody drove"))), Optional.of("untried"));
    private static final Question<String> WHO = new Question<>("Who?", "It stands in the record.",
            new Answers.Words(false, "a name"), Optional.empty());
    private static final Question<String> REPAIR = new Question<>("What was repaired?", "It stands in the record.",
            new Answers.Words(true, "what was done"), Optional.empty());
    private static final List<Question<?>> ALL = List.of(SURE, VOLTS, SENSOR, WHO, REPAIR);

    @ParameterizedTest
    @CsvSource({"yes, true", "Y, true", "' yes ', true", "no, false", "N, false"})
    void yesAndNoAreUnderstoodInAnyCase(String typed, boolean answer) {
        assertThat(SURE.answer(typed).value()).contains(answer);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "perhaps", "yes no", "1"})
    void whatIsNeitherIsRefused(String typed) {
        assertThat(SURE.answer(typed).problems()).singleElement()
                .satisfies(problem -> assertThat(problem.right()).isEqualTo("type yes or no"));
    }

    @ParameterizedTest
    @CsvSource({"2.5, 2.5", "2.5 V, 2.5", "-300 mV, -0.3", "5, 5", ".5, 0.5"})
    void aNumberAloneIsInTheUnitThatIsAsked(String typed, double volts) {
        assertThat(VOLTS.answer(typed).value()).contains(volts);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "5.1", "-2 V", "2 Hz", "some"})
    void numbersThatCannotBeAreRefused(String typed) {
        assertThat(VOLTS.answer(typed).problems()).isNotEmpty();
    }

    @Test
    void aChoiceGoesByItsNamesAndWhoTypesNothingGetsTheDefault() {
        assertThat(SENSOR.answer("NOT   tried").value()).contains("untried");
        assertThat(SENSOR.answer("y").value()).contains("works");
        assertThat(SENSOR.answer(" ").value()).contains("untried");
        assertThat(SENSOR.answer("no").problems()).singleElement()
                .satisfies(problem -> assertThat(problem.right()).isEqualTo("type yes or not tried"));
    }

    @Test
    void wordsAreKeptAsTheyAreTyped() {
        assertThat(REPAIR.answer(" New pins, Both ").value()).contains("New pins, Both");
        assertThat(REPAIR.answer("  ").value()).isEmpty();
        assertThat(WHO.answer("").value()).contains("");
    }

    @ParameterizedTest
    @ValueSource(strings = {"?", " ? ", "help", "HELP"})
    void askingWhatItMeansIsNeverAnAnswer(String typed) {
        assertThat(ALL).allSatisfy(question -> {
            assertThat(question.answer(typed).value()).isEmpty();
            assertThat(question.answer(typed).problems()).singleElement()
                    .satisfies(problem -> assertThat(problem.right()).isEqualTo(question.why()));
        });
    }

    @Property
    void whateverIsTypedIsAnsweredOrRefused(@ForAll String typed) {
        assertThat(ALL).allSatisfy(question -> assertThat(question.answer(typed)).isNotNull());
    }

    @Test
    void optionsThatCannotBeToldApartAreADefect() {
        Answers.Option<Integer> one = new Answers.Option<>(1, List.of("one"), "first");
        assertThatThrownBy(() -> new Answers.Choice<>(List.of(one, one))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Answers.Option<>(1, List.of("?"), "first")).isInstanceOf(IllegalArgumentException.class);
    }
}
