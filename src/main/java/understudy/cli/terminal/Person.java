package understudy.cli.terminal;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.Optional;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.refusal.Location;
import understudy.refusal.Refused;
import understudy.refusal.Result;
import understudy.text.Paragraph;

/** Whoever types the answers of a command that asks now and then. */
public final class Person {

    private final Surroundings surroundings;
    private final PrintWriter talk;
    private final String otherwise;

    /**
     * @param talk      where questions are shown
     * @param otherwise what follows when nobody answers
     */
    public Person(Surroundings surroundings, PrintWriter talk, String otherwise) {
        this.surroundings = surroundings;
        this.talk = talk;
        this.otherwise = otherwise;
    }

    /** Says what must hold, and waits for Enter and nothing else; {@code yes} answers for scripts. */
    public void await(String demand, boolean yes) {
        Paragraph.lines(demand).forEach(talk::println);
        if (yes) {
            return;
        }
        if (!surroundings.terminal()) {
            throw new Refused("nobody can be asked whether nothing else is connected", "see to it, then add --yes");
        }
        ask(new Question<>("Press Enter when that is so:", "A signal begins then; any other word starts nothing.",
                new Answers.EmptyLine<>("press it alone"), Optional.of(true)), "answer");
    }

    /**
     * The answer. Somebody at a terminal is asked until there is one; a script is refused.
     *
     * @param what the answer is called in a refusal
     */
    public <T> T ask(Question<T> question, String what) {
        return new Dialogue(sentence -> line(sentence, question, what), sentence -> Paragraph.lines(sentence).forEach(talk::println),
                talk::println).ask(question).orElseThrow(() -> Refused.setup("no answer came", otherwise));
    }

    private Optional<String> line(String sentence, Question<?> question, String what) {
        talk.print(sentence);
        talk.flush();
        Optional<String> line = read();
        if (line.isEmpty()) {
            talk.println();
        } else if (!surroundings.terminal()) {
            Result<?> answer = question.answer(line.get());
            if (answer.value().isEmpty()) {
                throw new Refused(answer.problems()).in(Location.named(what));
            }
        }
        return line;
    }

    private Optional<String> read() {
        try {
            return Optional.ofNullable(surroundings.in().readLine());
        } catch (IOException e) {
            throw Refused.setup("the answer could not be read: " + e.getMessage(), otherwise, e);
        }
    }
}
