package understudy.cli;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import understudy.quantity.Unit;
import understudy.rig.Amounts;
import understudy.trace.Answer;
import understudy.trace.Circuit;
import understudy.trace.Clash;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Judgement;
import understudy.trace.Numbered;
import understudy.trace.Place;
import understudy.trace.Point;
import understudy.trace.Suspect;

/** How a hunt stands, as a person reads it. */
final class TraceText {

    private static final int BAR = 20;
    /** What no meter shows. */
    private static final BigDecimal LEAST_VOLTS = new BigDecimal("1e-6");
    /** Suspects below this are summed up. */
    private static final double HARDLY = 0.01;

    private final Hunt hunt;

    TraceText(Hunt hunt) {
        this.hunt = hunt;
    }

    /** The circuit from sensor to module, with what was read at each point and the odds of what lies between. */
    List<String> circuit() {
        Circuit circuit = hunt.circuit();
        List<Suspect> suspects = circuit.suspects();
        List<String> lines = new ArrayList<>();
        for (Suspect suspect : suspects) {
            String share = percent(hunt.odds().probability(suspect.index()));
            lines.addAll(Paragraph.lines("   |  " + " ".repeat(Math.max(0, 6 - share.length())) + share + "  ", "   |          ",
                    suspect.name()));
            if (suspect.index() < circuit.points().size()) {
                Point point = circuit.points().get(suspect.index());
                String read = read(new Place(false, suspect.index()));
                String how = point.injectable() ? minutes(point.reachMinutes()) : "nobody can inject there";
                lines.addAll(Paragraph.lines(String.format(Locale.ROOT, "%3d  ", suspect.index() + 1), "     ",
                        point.name() + ", " + (read.isEmpty() ? how : read)));
            }
        }
        return lines;
    }

    /** "good (step 4), bad (step 9)". */
    private String read(Place place) {
        return hunt.standing().stream()
                .filter(event -> event.entry() instanceof Entry.Injected injected && injected.place().equals(place))
                .map(event -> verdict((Entry.Injected) event.entry()) + " (step " + event.number() + ")")
                .collect(Collectors.joining(", "));
    }

    static String verdict(Entry.Injected injected) {
        return Judgement.of(injected).verdict().name().toLowerCase(Locale.ROOT);
    }

    /** Those that may still be it, each with a bar. */
    List<String> suspects() {
        List<String> lines = new ArrayList<>();
        double rest = 0;
        int hardly = 0;
        for (Suspect suspect : hunt.circuit().suspects()) {
            double probability = hunt.odds().probability(suspect.index());
            if (probability < HARDLY) {
                rest += probability;
                hardly++;
            } else {
                lines.addAll(suspect(probability, suspect.name()));
            }
        }
        if (hardly > 0) {
            lines.addAll(suspect(rest, hardly == 1 ? "the other one" : "the other " + hardly + " together"));
        }
        return lines;
    }

    private static List<String> suspect(double probability, String name) {
        String bar = "=".repeat((int) Math.round(BAR * probability));
        String share = percent(probability);
        return Paragraph.lines("  " + bar + ".".repeat(BAR - bar.length()) + " ".repeat(Math.max(0, 7 - share.length())) + share
                + "  ", " ".repeat(BAR + 11), name);
    }

    /** What a step contradicts, with what to do; empty when it contradicts nothing. */
    Optional<String> clash(int number) {
        List<String> others = hunt.clashes().stream().filter(clash -> clash.goodNumber() == number || clash.badNumber() == number)
                .map(clash -> clash.goodNumber() == number
                        ? named(clash.badNumber(), "bad") : named(clash.goodNumber(), "good")).toList();
        boolean good = hunt.clashes().stream().anyMatch(clash -> clash.goodNumber() == number);
        return others.isEmpty() ? Optional.empty() : Optional.of("Step " + named(number, good ? "good" : "bad")
                + " contradicts step " + String.join(" and step ", others) + ": with one fault, what is good from one point on is"
                + " good from every point nearer to the module. A reading may be wrong, or there are two faults. Withdraw what you"
                + " doubt (like: withdraw " + number + "), and read there again.");
    }

    /** All that contradicts each other, once. */
    List<String> clashes() {
        return hunt.clashes().stream().map(Clash::badNumber).distinct().flatMap(bad -> clash(bad).stream())
                .flatMap(clash -> Paragraph.lines(clash).stream()).toList();
    }

    private String named(int number, String verdict) {
        return number + " (" + where(number) + ", " + verdict + ")";
    }

    private String where(int number) {
        return hunt.name(((Entry.Injected) hunt.events().get(number - 1).entry()).place());
    }

    /** Everything that happened, a paragraph each. */
    List<String> steps() {
        List<String> lines = new ArrayList<>();
        for (Numbered event : hunt.events()) {
            lines.addAll(Paragraph.lines(String.format(Locale.ROOT, "%3d  ", event.number()), "     ",
                    (event.standing() ? "" : "(withdrawn) ") + step(hunt, event)));
        }
        return lines;
    }

    /** Where it stands: circuit, suspects, steps. */
    List<String> where() {
        List<String> lines = new ArrayList<>(List.of(""));
        lines.addAll(Paragraph.lines("Job \"" + hunt.job().name() + "\": " + hunt.circuit().title()));
        lines.add("");
        lines.addAll(circuit());
        if (!hunt.events().isEmpty()) {
            lines.add("");
            lines.add("Steps so far:");
            lines.addAll(steps());
        }
        lines.addAll(clashes());
        lines.add("");
        return lines;
    }

    /** One step in words. */
    static String step(Hunt hunt, Numbered event) {
        Entry entry = event.entry();
        if (entry instanceof Entry.Cautioned) {
            return "the cautions were read and ticked";
        } else if (entry instanceof Entry.PinMeasured pin) {
            return place(hunt, pin.place()) + ": " + volts(pin.volts()) + " on the pin"
                    + (hunt.pinAllowed(pin) ? "" : ", which is not allowed");
        } else if (entry instanceof Entry.Injected injected) {
            return place(hunt, injected.place()) + ": " + Judgement.of(injected).verdict() + ", " + shown(injected)
                    + details(hunt, injected);
        } else if (entry instanceof Entry.WentOn wentOn) {
            return "went on without a proven method: " + wentOn.reason();
        } else if (entry instanceof Entry.Proven proven) {
            return "proven, " + proven.proof().key() + ": " + proven.how();
        } else if (entry instanceof Entry.Withdrawn withdrawn) {
            return "step " + withdrawn.number() + " does not count: " + withdrawn.reason();
        } else if (entry instanceof Entry.Noted noted) {
            return "note: " + noted.words();
        } else if (entry instanceof Entry.Repaired repaired) {
            return "repaired: " + repaired.words();
        }
        Entry.Closed closed = (Entry.Closed) entry;
        return "closed" + (closed.words().isEmpty() ? "" : ": " + closed.words()) + closed.ownSensorWorks()
                .map(works -> works ? "; works with its own sensor" : "; does not work with its own sensor").orElse("");
    }

    /** Likewise, and why it is judged so. */
    static String reasoned(Hunt hunt, Numbered event) {
        if (event.entry() instanceof Entry.Injected injected) {
            Judgement judgement = Judgement.of(injected);
            return place(hunt, injected.place()) + ": " + judgement.verdict() + details(hunt, injected) + ". " + judgement.reason();
        }
        return step(hunt, event);
    }

    private static String details(Hunt hunt, Entry.Injected injected) {
        return (injected.levelPart() < 1 ? ", at a level of " + percent(injected.levelPart()) : "")
                + injected.moved().map(moved -> ", when " + hunt.circuitOf(injected.place()).suspects().get(moved).name()
                        + " was moved").orElse("")
                + injected.clipPart().map(part -> ", " + percent(part) + " of the volts at the clips").orElse("");
    }

    /** Cautions in the patterns' own words. */
    static List<String> ownCautions(Hunt hunt) {
        List<String> lines = new ArrayList<>(Cautions.ownText(hunt.subjects().suspect().pattern()));
        hunt.subjects().reference().ifPresent(reference -> lines.addAll(Cautions.ownText(reference.pattern())));
        return lines;
    }

    private static String place(Hunt hunt, Place place) {
        return (place.onReference() ? "reference circuit, " : "") + hunt.name(place);
    }

    private static String shown(Entry.Injected injected) {
        return (injected.answer().kind() == Answer.Kind.VALUE
                ? injected.expected().unit().rounded(injected.answer().value(), 6) + " shown" : injected.answer().kind().words())
                + " (expected: " + injected.expected() + ")";
    }

    /** "0.3 V": as a meter shows it, without a prefix. */
    static String volts(double volts) {
        BigDecimal rounded = new BigDecimal(volts).round(new MathContext(3));
        return (rounded.abs().compareTo(LEAST_VOLTS) < 0 ? "0" : rounded.stripTrailingZeros().toPlainString()) + " V";
    }

    /** "7 min". */
    static String minutes(double minutes) {
        return Amounts.print(minutes, Unit.MINUTE);
    }

    /** Never more certain than it is. */
    static String percent(double part) {
        double percent = 100 * part;
        if (percent == 0 || percent >= 1 && percent < 99 || percent >= 100) {
            return Math.round(percent) + " %";
        }
        return percent < 0.1 ? "< 0.1 %" : String.format(Locale.ROOT, "%.1f %%", Math.floor(10 * percent) / 10);
    }
}
