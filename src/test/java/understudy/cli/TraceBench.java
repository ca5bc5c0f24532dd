package understudy.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Reader;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import understudy.cli.terminal.Person;
import understudy.cli.terminal.Surroundings;

/**
 * A person at a vehicle with one fault: follows what the session says, and answers what such a vehicle would show. What is
 * true of the vehicle is decided here, by nothing but where the fault lies.
 */
final class TraceBench {

    private static final Pattern PLACE = Pattern.compile("(?:NEXT|INSTEAD): (the reference circuit, )?([^.]+)\\.");
    private static final int NEVER = Integer.MAX_VALUE;
    /** No hunt here takes so many answers: one that does goes round in circles. */
    private static final int PATIENCE = 300;

    private final Path home;
    private final List<String> points;
    private final int fault;
    private final Map<Pattern, Deque<String>> scripted = new LinkedHashMap<>();
    private int answersLeft = NEVER;
    private boolean repaired;

    /** What a session left behind, and the prompts that it asked. */
    record Outcome(int exitCode, String out, String err, List<String> prompts) {}

    /**
     * @param points of the suspect circuit, by name
     * @param fault  index of the bad suspect: 0 the sensor's side, then the segments, the last the module
     */
    TraceBench(Path home, List<String> points, int fault) {
        this.home = home;
        this.points = points;
        this.fault = fault;
    }

    /** These answers first, when a question matches. */
    TraceBench answering(String question, String... answers) {
        scripted.computeIfAbsent(Pattern.compile(question), any -> new ArrayDeque<>()).addAll(List.of(answers));
        return this;
    }

    /** What was bad is mended already, if so. */
    TraceBench repaired(boolean already) {
        repaired = already;
        return this;
    }

    /** After so many answers the input ends. */
    TraceBench leavingAfter(int answers) {
        answersLeft = answers;
        return this;
    }

    Outcome understudy(String... args) {
        Screen screen = new Screen();
        StringWriter err = new StringWriter();
        Surroundings bare = Run.in(home).surroundings(new PrintWriter(screen), new PrintWriter(err));
        Person person = new Person(screen);
        Surroundings surroundings = new Surroundings(bare.out(), bare.err(), new BufferedReader(Reader.nullReader()) {
            @Override
            public String readLine() {
                return person.next();
            }
        }, bare.charset(), bare.env(), bare.folders(), bare.clock(), false, bare.terminals());
        int exitCode = Main.run(surroundings, args);
        return new Outcome(exitCode, screen.all(), err.toString(), person.prompts);
    }

    /**
     * Sits at a program of its own until that ends, or is ended; gives all that stood on the screen.
     *
     * @param first what happens when the first word is seen
     */
    String at(Process program, Runnable first) throws InterruptedException {
        Screen screen = new Screen();
        Person person = new Person(screen);
        Thread typing = new Thread(() -> {
            try (Writer keys = program.outputWriter(StandardCharsets.UTF_8)) {
                for (String line = person.next(); line != null; line = person.next()) {
                    keys.write(line + "\n");
                    keys.flush();
                }
            } catch (IOException gone) {
                // so is the program
            }
        });
        typing.setDaemon(true);
        typing.start();
        try (Reader shown = program.inputReader(StandardCharsets.UTF_8)) {
            char[] letters = new char[8192];
            for (int read = shown.read(letters); read >= 0; read = shown.read(letters)) {
                if (screen.all().isEmpty()) {
                    first.run();
                }
                screen.write(letters, 0, read);
                screen.flush();
            }
        } catch (IOException gone) {
            // killed while it was read
        }
        program.waitFor();
        return screen.all();
    }

    /** What was printed; whoever waits for a prompt is woken. */
    private static final class Screen extends Writer {
        private final StringBuilder text = new StringBuilder();
        private int answered;

        @Override
        public synchronized void write(char[] letters, int from, int length) {
            text.append(letters, from, length);
        }

        @Override
        public synchronized void flush() {
            notifyAll();
        }

        @Override
        public void close() {
            // nothing to free
        }

        synchronized String all() {
            return text.toString();
        }

        /** Waits for the next question, and gives all that stands on the screen so far. */
        synchronized String awaitPrompt() {
            try {
                while (text.length() == answered || text.charAt(text.length() - 1) != ' ') {
                    wait();
                }
            } catch (InterruptedException e) {
                throw new AssertionError(e);
            }
            answered = text.length();
            return text.toString();
        }
    }

    private final class Person {
        private final Screen screen;
        private final List<String> prompts = new ArrayList<>();

        Person(Screen screen) {
            this.screen = screen;
        }

        String next() {
            String shown = screen.awaitPrompt();
            String prompt = shown.substring(shown.lastIndexOf('\n') + 1);
            prompts.add(prompt);
            if (answersLeft == 0 || prompts.size() > PATIENCE) {
                return null;
            }
            answersLeft -= answersLeft == NEVER ? 0 : 1;
            for (Map.Entry<Pattern, Deque<String>> script : scripted.entrySet()) {
                if (script.getKey().matcher(prompt).find() && !script.getValue().isEmpty()) {
                    return script.getValue().removeFirst();
                }
            }
            return usual(prompt, shown);
        }

        private String usual(String prompt, String shown) {
            if (prompt.contains("Type yes") || prompt.startsWith("Are the clips still on")) {
                return "yes";
            } else if (prompt.startsWith("Volts on the pin")) {
                return "0.1 V";
            } else if (prompt.startsWith("What does the display show")) {
                return display(shown);
            } else if (prompt.startsWith("What did you repair")) {
                repaired = true;
                return "what was bad";
            } else if (prompt.matches("[a-z]+: ")) {
                return "measured, and fine"; // one of the things that are proven of a module
            }
            return "";
        }

        private String display(String shown) {
            Matcher matcher = PLACE.matcher(shown.replaceAll("\\s+", " "));
            String name = "";
            boolean onReference = false;
            while (matcher.find()) {
                onReference = matcher.group(1) != null;
                name = matcher.group(2);
            }
            boolean arrives = onReference || repaired || fault <= points.indexOf(name);
            return arrives ? "40" : "nothing";
        }
    }
}
