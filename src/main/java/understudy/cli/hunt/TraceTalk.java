package understudy.cli.hunt;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.jline.utils.Signals;
import understudy.cli.terminal.Dialogue;
import understudy.cli.terminal.Surroundings;
import understudy.question.Question;
import understudy.text.Paragraph;

/**
 * The conversation of a hunt: what is said, and the lines that are typed. A thread of its own waits for those, so that an
 * interrupt or a lost device is heard of while nobody types. Owned by the thread that makes it.
 */
final class TraceTalk implements AutoCloseable {

    private static final String[] STOP_SIGNALS = {"INT", "TERM", "HUP"};
    private static final long LOOK_MILLIS = 50;
    /** More than anybody types ahead. */
    private static final int LINES_AHEAD = 100;

    /** The user leaves, or nobody types any more. */
    static final class Left extends RuntimeException {
        Left() {
            super("left", null, false, false);
        }
    }

    private final Surroundings surroundings;
    /** An empty one is the end of the input. */
    private final BlockingQueue<Optional<String>> typed = new ArrayBlockingQueue<>(LINES_AHEAD);
    private boolean ended;
    private volatile boolean interrupted;
    private volatile Runnable silence = () -> {};

    TraceTalk(Surroundings surroundings) {
        this.surroundings = surroundings;
        Thread reader = new Thread(this::read, "typed-lines");
        reader.setDaemon(true);
        reader.start();
        for (String signal : STOP_SIGNALS) {
            Signals.register(signal, this::interrupt);
        }
    }

    private void read() {
        try {
            String line = surroundings.in().readLine();
            while (line != null) {
                typed.put(Optional.of(line));
                line = surroundings.in().readLine();
            }
            typed.put(Optional.empty());
        } catch (IOException e) {
            typed.offer(Optional.empty());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Silence first, whatever the conversation is about. */
    private void interrupt() {
        interrupted = true;
        silence.run();
        // who asks twice does not want to wait
        for (String signal : STOP_SIGNALS) {
            Signals.registerDefault(signal);
        }
    }

    /** What an interrupt does at once, from another thread. */
    void silenceBy(Runnable action) {
        silence = action;
        if (interrupted) {
            action.run();
        }
    }

    /** A paragraph, broken into lines. */
    void say(String text) {
        Paragraph.lines(text).forEach(surroundings.out()::println);
    }

    void lines(List<String> lines) {
        lines.forEach(surroundings.out()::println);
    }

    void gap() {
        surroundings.out().println();
    }

    /**
     * The next line that is typed.
     *
     * @param over asked all the while: true ends the waiting
     * @return empty when it was over before an answer came
     * @throws Left at the end of the input, and after an interrupt
     */
    Optional<String> answer(String question, BooleanSupplier over) {
        List<String> asked = Paragraph.lines(question);
        lines(asked.subList(0, asked.size() - 1));
        surroundings.out().print(asked.get(asked.size() - 1) + " ");
        surroundings.out().flush();
        Optional<String> line = next(over);
        // a terminal shows what is typed by itself
        if (line.isEmpty() || !surroundings.terminal()) {
            surroundings.out().println(line.orElse(""));
        }
        return line.map(String::strip);
    }

    /** The answer to a question; empty when it was over before one came. @throws Left as above */
    <T> Optional<T> ask(Question<T> question, BooleanSupplier over) {
        return new Dialogue(sentence -> answer(sentence, over), this::say, line -> lines(List.of(line))).ask(question);
    }

    private Optional<String> next(BooleanSupplier over) {
        try {
            while (!ended && !interrupted && !over.getAsBoolean()) {
                Optional<String> line = typed.poll(LOOK_MILLIS, TimeUnit.MILLISECONDS);
                if (line != null && line.isPresent()) {
                    return line;
                }
                ended = line != null;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("nobody interrupts this thread", e);
        }
        if (ended || interrupted) {
            surroundings.out().println();
            throw new Left();
        }
        return Optional.empty();
    }

    @Override
    public void close() {
        silence.run();
        for (String signal : STOP_SIGNALS) {
            Signals.registerDefault(signal);
        }
    }

    /** The answer to a question; stop alone leaves. */
    <T> T askOrLeave(Question<T> question) {
        return new Dialogue(this::lineOrStop, this::say, line -> lines(List.of(line))).ask(question).orElseThrow();
    }

    private Optional<String> lineOrStop(String sentence) {
        Optional<String> line = answer(sentence, () -> false);
        if (line.filter(typed -> typed.equalsIgnoreCase("stop")).isPresent()) {
            throw new Left();
        }
        return line;
    }
}
