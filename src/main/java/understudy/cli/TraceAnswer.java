package understudy.cli;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.reading.DisplayUnit;
import understudy.trace.Answer;
import understudy.trace.EventWords;
import understudy.wave.Hand;

/** While it plays: what is typed, until it is what the display shows. */
final class TraceAnswer {

    private static final Range LEVEL = new Range(1, 100, Unit.PERCENT);
    private static final Range ALTERNATING = new Range(0, 100, Unit.VOLT);
    static final Map<String, Answer.Kind> WORDS = Map.ofEntries(
            Map.entry("nothing", Answer.Kind.NOTHING), Map.entry("none", Answer.Kind.NOTHING),
            Map.entry("blank", Answer.Kind.NOTHING), Map.entry("dead", Answer.Kind.NOTHING),
            Map.entry("erratic", Answer.Kind.ERRATIC), Map.entry("jumps", Answer.Kind.ERRATIC),
            Map.entry("moves", Answer.Kind.COMES_AND_GOES), Map.entry("comes and goes", Answer.Kind.COMES_AND_GOES),
            Map.entry("comes and goes when moved", Answer.Kind.COMES_AND_GOES));
    private static final String[] OWN = {
        "While it plays, type what the display shows; that stops it:",
        "  47 or 29 mph     the number that it shows",
        "  nothing          it shows nothing",
        "  erratic          it jumps about",
        "  moves            it comes and goes when something is moved",
        "Or, while it plays on:",
        "  level 30 %       plays lower: shows corroded contacts, which pass the full signal",
        "  volts 0.4 V      what a meter for alternating volts shows at the clips just now"
    };

    private final TraceTalk talk;
    private final TraceDesk desk;
    private final TraceSignal signal;
    private final AtomicReference<Hand> hand;
    private Optional<Double> clipPart = Optional.empty();

    TraceAnswer(TraceTalk talk, TraceDesk desk, TraceSignal signal, AtomicReference<Hand> hand) {
        this.talk = talk;
        this.desk = desk;
        this.signal = signal;
        this.hand = hand;
    }

    /** Volts at the clips as a part of what they should be, if they were measured. */
    Optional<Double> clipPart() {
        return clipPart;
    }

    /** Empty when it was over before the answer came. */
    Optional<Answer> ask(BooleanSupplier over) {
        DisplayUnit unit = signal.expected().unit();
        talk.say("Type a number, nothing, erratic or moves; ? tells what else goes.");
        while (true) {
            Optional<String> line = desk.ask("What does the display show, in " + unit.symbol() + "? ", over, OWN);
            if (line.isEmpty()) {
                return Optional.empty();
            }
            String typed = line.get().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
            if (typed.startsWith("level")) {
                TraceNumbers.read(talk, typed.substring(5).strip(), "%", LEVEL).ifPresent(this::level);
            } else if (typed.startsWith("volts")) {
                TraceNumbers.read(talk, line.get().substring(5).strip(), "V", ALTERNATING).ifPresent(this::clips);
            } else {
                Optional<Answer> answer = WORDS.containsKey(typed) ? Optional.of(Answer.of(WORDS.get(typed))) : number(line.get(), over);
                if (answer.isPresent() || over.getAsBoolean()) {
                    return answer;
                }
            }
        }
    }

    private void level(double percent) {
        hand.set(hand.get().withLevel(percent / 100));
        talk.say("It plays at " + EventWords.percent(percent / 100) + " of its level now. What the display should show is the same.");
    }

    private void clips(double volts) {
        double due = signal.clipVolts() * hand.get().level();
        clipPart = Optional.of(volts / due);
        talk.say("That is " + Math.round(100 * volts / due) + " % of the " + EventWords.volts(due) + " that should be there"
                + " (a meter tells it right up to some hundred Hz).");
    }

    private Optional<Answer> number(String line, BooleanSupplier over) {
        if (line.isEmpty()) {
            talk.say("Type what the display shows; nothing, if it shows nothing.");
            return Optional.empty();
        }
        return ShownNumber.read(line, signal.expected(), "nothing, erratic, moves", talk::say, question -> desk.ask(question, over));
    }
}
