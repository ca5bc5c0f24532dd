package understudy.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.refusal.Refused;
import understudy.store.Jobs;
import understudy.trace.Entry;
import understudy.trace.EventWords;
import understudy.trace.Hunt;
import understudy.trace.Numbered;
import understudy.trace.Place;
import understudy.trace.Point;
import understudy.trace.Step;

/**
 * What a session works at: the job as it stands, of which each thing is on the disk before anything else is asked, and the
 * words that are understood at every prompt.
 */
final class TraceDesk {

    private static final List<String> COMMON = List.of(
            "  where            how the hunt stands: circuit, suspects, steps",
            "  other            inject at another point, chosen by its number",
            "  again            the last reading does not count: read it once more",
            "  withdraw 4       step 4 does not count; you are asked why",
            "  note ...         keeps these words with the job",
            "  close            ends the job as it stands",
            "  stop             leaves; the job is kept, and you can resume it",
            "  ?                these words");

    /** A word led elsewhere: what was being asked is asked no more. */
    static final class Turned extends RuntimeException {
        Turned() {
            super("turned", null, false, false);
        }
    }

    private static final String WHY_WITHDRAW =
            "What was read stays in the record, with the reason why it does not count; who reads the report wants to know it.";

    private final Surroundings surroundings;
    private final TraceTalk talk;
    private final Jobs jobs;
    private Hunt hunt;
    private Optional<Place> chosen = Optional.empty();
    private boolean closing;

    TraceDesk(Surroundings surroundings, TraceTalk talk, Jobs jobs, Hunt hunt) {
        this.surroundings = surroundings;
        this.talk = talk;
        this.jobs = jobs;
        this.hunt = hunt;
    }

    Hunt hunt() {
        return hunt;
    }

    /** Where the user wants to inject next, if anywhere; forgotten when it is asked. */
    Optional<Place> takeChosen() {
        Optional<Place> place = chosen;
        chosen = Optional.empty();
        return place;
    }

    /** Whether the user wants to close the job; forgotten when it is asked. */
    boolean takeClosing() {
        boolean asked = closing;
        closing = false;
        return asked;
    }

    /** On the disk when this returns; gives the number of the step. */
    int keep(Entry entry) {
        hunt = jobs.add(hunt, surroundings.clock().instant(), entry);
        return hunt.events().size();
    }

    /** The line that is typed, once it is none of the words that are understood everywhere. */
    String ask(String question, String... own) {
        return ask(question, () -> false, own).orElseThrow();
    }

    /**
     * Likewise, while something else may end.
     *
     * @param own what else can be typed here, a line each, for who asks
     */
    Optional<String> ask(String question, BooleanSupplier over, String... own) {
        while (true) {
            Optional<String> line = talk.answer(question, over);
            if (line.isEmpty() || !understood(line.get(), own)) {
                return line;
            }
        }
    }

    /** One of the words that are understood everywhere was typed, and done. */
    private boolean understood(String line, String... own) {
        String[] words = line.split("\\s+", 2);
        String rest = words.length > 1 ? words[1].strip() : "";
        try {
            switch (words[0].toLowerCase(Locale.ROOT)) {
                case "?", "help" -> help(own);
                case "where" -> talk.lines(new TraceText(hunt).where());
                case "other" -> other(rest);
                case "again" -> again(rest);
                case "withdraw", "undo" -> withdraw(rest);
                case "note" -> note(rest);
                case "close" -> {
                    closing = true;
                    throw new Turned();
                }
                case "stop", "quit", "exit" -> throw new TraceTalk.Left();
                default -> {
                    return false;
                }
            }
        } catch (Refused refusal) {
            talk.say(refusal.wrong() + "; " + refusal.right());
        }
        return true;
    }

    private void help(String... own) {
        talk.lines(own.length == 0 ? List.of() : List.of(own));
        talk.lines(COMMON);
    }

    private void note(String words) {
        String kept = words.isEmpty() ? words("What is to be kept?", "A note stands in the record, with its time, and changes nothing else.") : words;
        talk.say("Kept as step " + keep(new Entry.Noted(kept)) + ".");
    }

    /** Words of the user's own, at least one; nothing in them is taken for a command but stop alone. */
    String words(String sentence, String why) {
        return new Dialogue(talk::lineOrStop, talk::say)
                .ask(new Question<>(sentence, why, new Answers.Words(true, "they stand in the record"), Optional.empty())).orElseThrow();
    }

    boolean yes(String sentence) {
        while (true) {
            String line = ask(sentence).toLowerCase(Locale.ROOT);
            if (List.of("yes", "y", "no", "n").contains(line)) {
                return line.startsWith("y");
            }
            talk.say("Type yes or no.");
        }
    }

    private void withdraw(String rest) {
        String[] words = rest.split("\\s+", 2);
        boolean numbered = words[0].matches("\\d{1,6}");
        int number = numbered ? Integer.parseInt(words[0]) : last(Entry.class);
        String reason = numbered ? words.length > 1 ? words[1] : "" : rest;
        // refused before a reason is asked for
        hunt.after(surroundings.clock().instant(), new Entry.Withdrawn(number, ""));
        talk.say("Step " + number + ": " + EventWords.step(hunt, hunt.events().get(number - 1)));
        keep(new Entry.Withdrawn(number, reason.isBlank() ? words("Why does it not count?", WHY_WITHDRAW) : reason));
        talk.say("Step " + number + " no longer counts; it stays in the record.");
        throw new Turned();
    }

    private void again(String reason) {
        int number = last(Entry.Injected.class);
        Place place = ((Entry.Injected) hunt.events().get(number - 1).entry()).place();
        keep(new Entry.Withdrawn(number, reason.isEmpty() ? words("Why does step " + number + " not count?", WHY_WITHDRAW) : reason));
        chosen = Optional.of(place);
        throw new Turned();
    }

    private int last(Class<? extends Entry> kind) {
        List<Numbered> events = hunt.standing().stream()
                .filter(event -> kind.isInstance(event.entry()) && !(event.entry() instanceof Entry.Withdrawn)).toList();
        if (events.isEmpty()) {
            throw new Refused(kind == Entry.class ? "nothing has happened yet" : "nothing was read yet",
                    "there is nothing to take back");
        }
        return events.get(events.size() - 1).number();
    }

    private void other(String number) {
        Step next = hunt.next();
        if (next instanceof Step.Caution || next instanceof Step.Ended) {
            throw new Refused("nothing can be injected now", next instanceof Step.Caution
                    ? "read and tick the cautions first" : "this job is closed");
        }
        boolean onReference = next instanceof Step.Inject inject && inject.purpose() == Step.Purpose.METHOD;
        List<Point> points = hunt.circuitOf(new Place(onReference, 0)).points();
        String line = number;
        if (line.isEmpty()) {
            for (int i = 0; i < points.size(); i++) {
                if (points.get(i).injectable()) {
                    talk.lines(List.of("  " + (i + 1) + "  " + points.get(i).name() + ", "
                            + EventWords.minutes(points.get(i).reachMinutes())));
                }
            }
            line = ask("Which point? Its number, or Enter for the one proposed: ");
        }
        if (line.isEmpty()) {
            return;
        }
        if (!line.matches("\\d{1,3}") || Integer.parseInt(line) < 1 || Integer.parseInt(line) > points.size()
                || !points.get(Integer.parseInt(line) - 1).injectable()) {
            throw new Refused("\"" + line + "\" is no point where one can inject", "type other, then one of the numbers");
        }
        chosen = Optional.of(new Place(onReference, Integer.parseInt(line) - 1));
        throw new Turned();
    }
}
