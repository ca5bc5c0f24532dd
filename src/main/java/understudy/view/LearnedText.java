package understudy.view;

import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.reading.DisplayUnit;
import understudy.reading.Estimate;
import understudy.reading.Implied;
import understudy.reading.Judged;
import understudy.reading.Learned;
import understudy.reading.LearnedPairs;
import understudy.reading.Pair;
import understudy.reading.Reading;
import understudy.reading.Scale;
import understudy.reading.ScaleFit;
import understudy.refusal.Control;
import understudy.refusal.Refusals;
import understudy.text.Json;
import understudy.text.Paragraph;
import understudy.text.Table;

/** What was learned of a display, in plain words and for scripts. */
public final class LearnedText {

    private static final double KM_PER_MILE = 1.609344;

    private final LearnedPairs.Read read;
    private final Learned learned;
    private final Optional<Reading> declared;
    private final String by;
    private final OptionalDouble rollsMetres;

    private LearnedText(LearnedPairs.Read read, Learned learned, Optional<Reading> declared, String by, OptionalDouble rollsMetres) {
        this.read = read;
        this.learned = learned;
        this.declared = declared;
        this.by = by;
        this.rollsMetres = rollsMetres;
    }

    /** @param by what declares the reading, if there is one: "the reading given", "the circuit's file" */
    public static LearnedText of(LearnedPairs.Read read, Optional<Reading> declared, String by, OptionalDouble rollsMetres, Refusals given) {
        if (read.pairs().stream().mapToDouble(Pair::shown).distinct().count() < 2) {
            given.add(Control.PAIRS, "the display shows " + read.unit().exactly(read.pairs().get(0).shown())
                    + " whatever is injected", "there is no scale to learn; look whether the signal arrives at all");
            given.refuse();
        }
        return new LearnedText(read, Learned.of(read.pairs(), read.unit(),
                declared.map(reading -> OptionalDouble.of(reading.step())).orElse(OptionalDouble.empty())), declared, by, rollsMetres);
    }

    public Learned learned() {
        return learned;
    }

    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.addAll(pairs());
        lines.add("");
        lines.addAll(told());
        return lines;
    }

    /** All that follows from the pairs. */
    public List<String> told() {
        List<String> lines = new ArrayList<>(Paragraph.lines(scale()));
        for (String more : List.of(meaning(), beside())) {
            if (!more.isEmpty()) {
                lines.addAll(Paragraph.lines(more));
            }
        }
        List<String> odd = findings();
        if (!odd.isEmpty()) {
            lines.add("");
            odd.forEach(finding -> lines.addAll(Paragraph.lines("Look: ", "  ", finding)));
        }
        lines.add("");
        lines.addAll(Paragraph.lines(trust()));
        lines.add("To keep it, write into the circuit's file:");
        lines.add("  reading: " + learned.reading().text());
        return lines;
    }

    private List<String> pairs() {
        DisplayUnit unit = learned.unit();
        Table table = new Table().row("Injected", "Displayed", "On the line", "");
        for (int i = 0; i < read.pairs().size(); i++) {
            Pair pair = read.pairs().get(i);
            table.row(read.injected().words(read.points().get(i)), unit.exactly(pair.shown()),
                    unit.print(learned.fit().shown(pair.frequencyHz()), learned.step()), setAside(pair) ? "left out" : "");
        }
        return table.lines();
    }

    private boolean setAside(Pair pair) {
        return !learned.used().contains(pair);
    }

    private String scale() {
        ScaleFit fit = learned.fit();
        DisplayUnit unit = learned.unit();
        String offset = between(fit.offset(), unit, 3);
        return fit.throughZero().isPresent()
                ? "The display shows " + between(fit.throughZero().get(), unit, 5) + " for each Hz, and 0 at 0 Hz. (Without taking"
                        + " that 0 for granted: " + between(fit.perHz(), unit, 5) + " for each Hz, " + offset + " at 0 Hz.)"
                : "The display shows " + between(fit.perHz(), unit, 5) + " for each Hz, and " + offset + " at 0 Hz.";
    }

    private static String between(Estimate limits, DisplayUnit unit, int digits) {
        String symbol = " " + unit.symbol();
        return unit.rounded(limits.value(), digits) + " (" + unit.rounded(limits.low(), digits).replace(symbol, "") + " to "
                + unit.rounded(limits.high(), digits).replace(symbol, "") + ")";
    }

    private String meaning() {
        Optional<Estimate> perKm = Implied.pulsesPerKm(learned);
        if (perKm.isPresent()) {
            Estimate pulses = perKm.get();
            return "That is " + counts(pulses, 1) + " pulses a km, " + counts(pulses, KM_PER_MILE) + " a mile; one for every "
                    + new Quantity(1000 / pulses.value(), Unit.METRE).rounded(4) + " of road." + teeth(pulses);
        }
        return Implied.eventsPerTurn(learned).map(events -> "That is " + counts(events, 1) + " events a turn of the crank."
                + (Implied.cylinders(events).isEmpty() ? "" : " One a power stroke, that is a four-stroke engine of "
                        + or(Implied.cylinders(events)) + " cylinders.")).orElse("");
    }

    private String teeth(Estimate pulses) {
        if (rollsMetres.isEmpty()) {
            return "";
        }
        List<Integer> teeth = Implied.teeth(pulses, rollsMetres.getAsDouble());
        String tyre = new Quantity(rollsMetres.getAsDouble(), Unit.METRE).rounded(4);
        return " On a wheel that rolls " + tyre + " a turn, give or take " + (int) Implied.TYRE_PERCENT + " %, "
                + (teeth.isEmpty() ? "no whole number of teeth fits." : "a ring of " + or(teeth) + " teeth fits.");
    }

    private static String or(List<Integer> numbers) {
        return numbers.size() > 3
                ? numbers.get(0) + " to " + numbers.get(numbers.size() - 1)
                : numbers.stream().map(String::valueOf).collect(Collectors.joining(", ")).replaceFirst(", (\\d+)$", " or $1");
    }

    private static String counts(Estimate limits, double times) {
        return counted(limits.value() * times) + " (" + counted(limits.low() * times) + " to " + counted(limits.high() * times) + ")";
    }

    private static String counted(double number) {
        return Json.number(number).round(new MathContext(5)).toPlainString();
    }

    private String beside() {
        if (declared.isEmpty()) {
            return "";
        }
        return Implied.beside(learned, declared.get()).map(this::beside).orElseGet(this::besideTable);
    }

    private String beside(Implied.Beside beside) {
        if (beside.maybe(1)) {
            return "That agrees with what " + by + " declares.";
        }
        String times = "The scale is " + counts(beside.ratio(), 1) + " times what " + by + " declares";
        if (beside.maybe(2)) {
            return times + ": twice. The module counts both edges of each tooth, or is set for half as many teeth.";
        }
        if (beside.maybe(0.5)) {
            return times + ": half. The module counts every other tooth, or is set for twice as many.";
        }
        double teeth = declared.get().scale() instanceof Scale.Rolling rolling ? rolling.teeth() / beside.ratio().value() : Double.NaN;
        return times + (Double.isNaN(teeth) ? "." : ": as if the ring had " + counted(Math.rint(teeth * 10) / 10) + " teeth, or the tyre were "
                + (beside.ratio().value() > 1 ? "larger." : "smaller."));
    }

    private String besideTable() {
        long good = read.pairs().stream().filter(pair -> declared.get().expected(pair.frequencyHz())
                .filter(expected -> Judged.of(pair.shown(), expected).good()).isPresent()).count();
        return "Of the " + read.pairs().size() + " numbers " + good + " are as " + by + " declares.";
    }

    private List<String> findings() {
        return learned.findings().stream().map(finding -> FindingWords.of(finding, learned.unit())).toList();
    }

    private String trust() {
        ScaleFit fit = learned.fit();
        int count = learned.used().size();
        String step = learned.unit().exactly(learned.step());
        return switch (fit.basis()) {
            case ROUNDING -> "If the display does nothing but round to the nearest " + step + ", the truth lies within these limits for certain."
                    + " A last digit that flickers can carry it out of them."
                    + (count == 2 ? " Two numbers can't show whether it does; take a third." : "");
            case LAG -> "The truth lies within these limits if the display lags by no more than that.";
            case SCATTER -> "The truth lies within these limits 19 times out of 20, by the scatter of " + count + " numbers.";
        };
    }

    private record Fitted(String unit, double step, List<Used> pairs, Estimate perHz, Estimate offset, Optional<Estimate> perHzThroughZero,
            String limitsBy, Optional<Estimate> pulsesPerKm, Optional<Estimate> eventsPerTurn, Optional<Object> teeth,
            Optional<Estimate> timesDeclared, List<String> findings, String reading) {}

    private record Used(double frequencyHz, double shown, boolean used) {}

    /** For scripts; null where there is nothing. */
    public Object json() {
        ScaleFit fit = learned.fit();
        Optional<Object> teeth = rollsMetres.isEmpty() ? Optional.empty() : Optional.of(Implied.pulsesPerKm(learned)
                .map(pulses -> Implied.teeth(pulses, rollsMetres.getAsDouble())).orElse(List.of()));
        return new Fitted(learned.unit().symbol(), learned.step(), read.pairs().stream()
                .map(pair -> new Used(pair.frequencyHz(), pair.shown(), !setAside(pair))).toList(), fit.perHz(), fit.offset(),
                fit.throughZero(), fit.basis().name().toLowerCase(Locale.ROOT), Implied.pulsesPerKm(learned),
                Implied.eventsPerTurn(learned), teeth, declared.flatMap(reading -> Implied.beside(learned, reading))
                        .map(beside -> beside.ratio()), findings(), learned.reading().text());
    }
}
