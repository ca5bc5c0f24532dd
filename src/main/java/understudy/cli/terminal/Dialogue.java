package understudy.cli.terminal;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.refusal.Result;
import understudy.text.Paragraph;

/** Shows a question and reads until it is answered; who types ? gets it explained, and is asked again. */
public final class Dialogue {

    private final Function<String, Optional<String>> lines;
    private final Consumer<String> say;
    private final Consumer<String> show;

    /**
     * @param lines shows a sentence and gives the line that is typed; empty when nobody answers any more
     * @param say   shows a sentence
     * @param show  shows a line as it is
     */
    public Dialogue(Function<String, Optional<String>> lines, Consumer<String> say, Consumer<String> show) {
        this.lines = lines;
        this.say = say;
        this.show = show;
    }

    /** Empty when nobody answers any more. */
    public <T> Optional<T> ask(Question<T> question) {
        while (true) {
            Optional<String> line = lines.apply(question.sentence() + " ");
            if (line.isEmpty()) {
                return Optional.empty();
            }
            Result<T> answer = question.answer(line.get());
            if (answer.value().isPresent()) {
                return answer.value();
            } else if (Question.asksWhy(line.get())) {
                explain(question);
            } else {
                answer.problems().forEach(refusal -> say.accept(capital(CommandWords.text(refusal)) + "."));
            }
        }
    }

    private void explain(Question<?> question) {
        say.accept(question.why());
        List<Answers.Meaning> meanings = question.answers().meanings();
        int width = meanings.stream().mapToInt(meaning -> meaning.typed().length()).max().orElse(0) + 3;
        for (Answers.Meaning meaning : meanings) {
            Paragraph.lines("  " + meaning.typed() + " ".repeat(width - meaning.typed().length()), " ".repeat(width + 2), meaning.meaning())
                    .forEach(show);
        }
    }

    public static String capital(String sentence) {
        return sentence.isEmpty() || !Character.isLetter(sentence.charAt(0)) ? sentence
                : Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }
}
