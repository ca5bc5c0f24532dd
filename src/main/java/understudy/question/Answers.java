package understudy.question;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import understudy.quantity.Range;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refused;
import understudy.refusal.Result;

/**
 * What may be answered to a question.
 *
 * @param <T> what an answer is once it is read
 */
public sealed interface Answers<T> {

    /** Reads what was typed, without blanks at its ends; refuses what is no answer. */
    Result<T> read(String typed);

    /** What may be typed, each with what it means. */
    List<Meaning> meanings();

    /** What may be typed, and what that means; both in words. */
    record Meaning(String typed, String meaning) {}

    /** Yes or no, in full or by the first letter, in any case. */
    record YesNo(String yesMeans, String noMeans) implements Answers<Boolean> {

        @Override
        public Result<Boolean> read(String typed) {
            return switch (typed.toLowerCase(Locale.ROOT)) {
                case "yes", "y" -> Result.of(true);
                case "no", "n" -> Result.of(false);
                default -> refused(typed.isEmpty() ? "an answer is needed" : "\"" + typed + "\" is neither yes nor no", "type yes or no");
            };
        }

        @Override
        public List<Meaning> meanings() {
            return List.of(new Meaning("yes", yesMeans), new Meaning("no", noMeans));
        }
    }

    /** Nothing but an empty line, which the question takes for its answer; no word of any kind will do. */
    record EmptyLine<T>(String meaning) implements Answers<T> {

        @Override
        public Result<T> read(String typed) {
            return refused("\"" + typed + "\" is more than Enter", "press Enter alone");
        }

        @Override
        public List<Meaning> meanings() {
            return List.of(new Meaning("Enter", meaning));
        }
    }

    /**
     * One of several.
     *
     * @param names   that are understood in any case, the first is the one that is shown
     * @param meaning in words
     */
    record Option<T>(T value, List<String> names, String meaning) {
        public Option {
            names = List.copyOf(names);
            if (names.isEmpty() || names.stream().anyMatch(name -> !Typing.plain(name).equals(name) || Question.asksWhy(name))) {
                throw new IllegalArgumentException("an option has names that can be typed, not " + names);
            }
        }
    }

    /** One of these, by a name; no two share one. */
    record Choice<T>(List<Option<T>> options) implements Answers<T> {
        public Choice {
            options = List.copyOf(options);
            List<String> names = options.stream().flatMap(option -> option.names().stream()).toList();
            if (names.isEmpty() || names.stream().distinct().count() < names.size()) {
                throw new IllegalArgumentException("options are told apart by their names, not by " + names);
            }
        }

        @Override
        public Result<T> read(String typed) {
            String plain = Typing.plain(typed);
            Optional<Option<T>> chosen = options.stream().filter(option -> option.names().contains(plain)).findFirst();
            return chosen.map(option -> Result.of(option.value())).orElseGet(() -> refused(
                    typed.isEmpty() ? "an answer is needed" : "\"" + typed + "\" is none of them", "type " + shown()));
        }

        private String shown() {
            List<String> names = options.stream().map(option -> option.names().get(0)).toList();
            int last = names.size() - 1;
            return last == 0 ? names.get(0) : names.subList(0, last).stream().collect(Collectors.joining(", ")) + " or " + names.get(last);
        }

        @Override
        public List<Meaning> meanings() {
            return options.stream().map(option -> new Meaning(option.names().get(0), option.meaning())).toList();
        }
    }

    /**
     * One of these, by a name, or something else that is read on its own.
     *
     * @param other   reads what is none of the names
     * @param meaning of something else
     */
    record Otherwise<T>(List<Option<T>> options, Function<String, Result<T>> other, Meaning meaning) implements Answers<T> {
        public Otherwise {
            options = List.copyOf(options);
        }

        @Override
        public Result<T> read(String typed) {
            String plain = Typing.plain(typed);
            return options.stream().filter(option -> option.names().contains(plain)).findFirst()
                    .map(option -> Result.of(option.value())).orElseGet(() -> other.apply(typed));
        }

        @Override
        public List<Meaning> meanings() {
            List<Meaning> meanings = new ArrayList<>(List.of(meaning));
            options.forEach(option -> meanings.add(new Meaning(option.names().get(0), option.meaning())));
            return meanings;
        }
    }

    /**
     * What goes at this question, beside words that go at many.
     *
     * @param own      of this question
     * @param words    reads the others; empty for what is none of them
     * @param others   what those mean
     */
    record Beside<T>(Answers<T> own, Function<String, Optional<T>> words, List<Meaning> others) implements Answers<T> {
        public Beside {
            others = List.copyOf(others);
        }

        @Override
        public Result<T> read(String typed) {
            return words.apply(typed).map(Result::of).orElseGet(() -> own.read(typed));
        }

        @Override
        public List<Meaning> meanings() {
            return Stream.concat(own.meanings().stream(), others.stream()).toList();
        }
    }

    /**
     * The same answers, each made into something else.
     *
     * @param <S> what an answer is at first
     */
    record As<S, T>(Answers<S> answers, Function<S, T> made) implements Answers<T> {

        @Override
        public Result<T> read(String typed) {
            Result<S> read = answers.read(typed);
            return Result.of(read.value().map(made), read.problems());
        }

        @Override
        public List<Meaning> meanings() {
            return answers.meanings();
        }
    }

    /**
     * A number in a range, read in the base unit of its dimension; a number alone is in the range's unit.
     *
     * @param meaning of the number, in words
     */
    record Number(Range range, String meaning) implements Answers<Double> {

        @Override
        public Result<Double> read(String typed) {
            if (typed.isEmpty()) {
                return refused("a number is needed here", range.allowed());
            }
            try {
                return Result.of(range.typed(typed));
            } catch (Refused e) {
                return Result.refused(e.refusals());
            }
        }

        @Override
        public List<Meaning> meanings() {
            return List.of(new Meaning("a number in " + range.unit().symbol(), meaning + "; " + range.allowed()));
        }
    }

    /**
     * A person's own words.
     *
     * @param needed whether there must be some
     */
    record Words(boolean needed, String meaning) implements Answers<String> {

        @Override
        public Result<String> read(String typed) {
            return needed && typed.isEmpty() ? refused("a few words are needed here", "they stand in the record") : Result.of(typed);
        }

        @Override
        public List<Meaning> meanings() {
            List<Meaning> meanings = new ArrayList<>(List.of(new Meaning("your own words", meaning)));
            if (!needed) {
                meanings.add(new Meaning("nothing", "there is nothing to say"));
            }
            return meanings;
        }
    }

    private static <T> Result<T> refused(String wrong, String right) {
        return Result.refused(List.of(new Refusal(Location.NOWHERE, wrong, right)));
    }
}
