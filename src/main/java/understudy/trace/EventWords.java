package understudy.trace;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import understudy.quantity.Unit;
import understudy.rig.Amounts;

/** What happened in a hunt, in words; and a hunt's numbers as people read them. */
public final class EventWords {

    /** What no meter shows. */
    private static final BigDecimal LEAST_VOLTS = new BigDecimal("1e-6");

    private EventWords() {}

    /** One step in words. */
    public static String step(Hunt hunt, Numbered event) {
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
        if (entry instanceof Entry.Corrected corrected) {
            return corrected.detail().key() + " corrected: \"" + corrected.words() + "\", was \"" + corrected.was() + "\"";
        }
        Entry.Closed closed = (Entry.Closed) entry;
        return "closed" + (closed.words().isEmpty() ? "" : ": " + closed.words()) + closed.ownSensorWorks()
                .map(works -> works ? "; works with its own sensor" : "; does not work with its own sensor").orElse("");
    }

    /** Likewise, and why it is judged so. */
    public static String reasoned(Hunt hunt, Numbered event) {
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

    /** "good", "bad", ... */
    public static String verdict(Entry.Injected injected) {
        return Judgement.of(injected).verdict().name().toLowerCase(Locale.ROOT);
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
    public static String volts(double volts) {
        BigDecimal rounded = new BigDecimal(volts).round(new MathContext(3));
        return (rounded.abs().compareTo(LEAST_VOLTS) < 0 ? "0" : rounded.stripTrailingZeros().toPlainString()) + " V";
    }

    /** "7 min". */
    public static String minutes(double minutes) {
        return Amounts.print(minutes, Unit.MINUTE);
    }

    /** Never more certain than it is. */
    public static String percent(double part) {
        double percent = 100 * part;
        if (percent == 0 || percent >= 1 && percent < 99 || percent >= 100) {
            return Math.round(percent) + " %";
        }
        return percent < 0.1 ? "< 0.1 %" : String.format(Locale.ROOT, "%.1f %%", Math.floor(10 * percent) / 10);
    }
}
