package understudy.view;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import understudy.plot.LinePlot;
import understudy.quantity.NumberText;
import understudy.quantity.Unit;
import understudy.reading.DisplayUnit;
import understudy.reading.Injected;
import understudy.reading.Learned;
import understudy.reading.LearnedPairs;
import understudy.reading.Pair;
import understudy.refusal.Refusals;
import understudy.sweep.SweepRange;
import understudy.sweep.SweepRow;
import understudy.sweep.SweptCircuit;
import understudy.text.Paragraph;
import understudy.text.Table;

/** What a sweep tells of the module: the table, where it reads right, its scale, and a drawing of what is off. */
public final class SweepText {

    private final SweptCircuit swept;
    private final List<SweepRow> rows;
    private final Optional<LearnedText> learned;

    public SweepText(SweptCircuit swept, List<SweepRow> rows) {
        this.swept = swept;
        this.rows = List.copyOf(rows);
        this.learned = learn();
    }

    private Optional<LearnedText> learn() {
        List<SweepRow> withNumber = rows.stream().filter(row -> row.pair().isPresent()).toList();
        List<Pair> pairs = withNumber.stream().map(row -> row.pair().orElseThrow()).toList();
        if (pairs.stream().mapToDouble(Pair::frequencyHz).distinct().count() < 2
                || pairs.stream().mapToDouble(Pair::shown).distinct().count() < 2) {
            return Optional.empty();
        }
        Injected injected = new Injected(Optional.of(swept.pattern()), Optional.of(swept.output()));
        LearnedPairs.Read read = new LearnedPairs.Read(swept.reading().unit(), injected,
                withNumber.stream().map(row -> injected.atSpeed(row.speedHz())).toList(), pairs);
        return Optional.of(LearnedText.of(read, Optional.of(swept.reading()), swept.by(), OptionalDouble.empty(), new Refusals()));
    }

    public Optional<Learned> learned() {
        return learned.map(LearnedText::learned);
    }

    /** Whether everything that tells something is right. */
    public boolean allRight() {
        return rows.stream().filter(SweepRow::tells).allMatch(SweepRow::right);
    }

    public List<String> lines() {
        List<String> lines = new ArrayList<>(table());
        lines.add("");
        lines.addAll(Paragraph.lines(SweepRange.words(rows, swept)));
        lines.add("");
        lines.addAll(learned.map(LearnedText::told).orElseGet(() -> Paragraph.lines("No scale can be learned: that takes two"
                + " different numbers, at two different speeds.")));
        return lines;
    }

    private List<String> table() {
        DisplayUnit unit = swept.reading().unit();
        Table table = new Table().row("Step", "Speed", "Frequency", "Expected", "Displayed", "Off by", "", "Verdict");
        for (int i = 0; i < rows.size(); i++) {
            SweepRow row = rows.get(i);
            double step = row.expected().step();
            table.row(String.valueOf(i + 1), swept.pattern().speed().print(row.speedHz()), NumberText.of(row.frequencyHz(), Unit.HERTZ),
                    unit.print(row.expected().value(), step),
                    row.seen().isEmpty() ? "-" : row.shown().filter(shown -> !row.verdict().equals("nothing"))
                            .map(number -> unit.rounded(number, 6)).orElse(row.verdict()),
                    row.deviation().map(away -> signed(unit.print(away, step))).orElse("-"),
                    row.deviationPercent().map(percent -> signed(tenth(percent) + " %")).orElse("-"), row.verdict());
        }
        return table.lines();
    }

    private static String tenth(double percent) {
        return new BigDecimal(percent).setScale(1, RoundingMode.HALF_UP).toPlainString();
    }

    private static String signed(String number) {
        return number.matches("[-0].*") && !number.matches("0\\.0*[1-9].*") ? number : "+" + number;
    }

    /** What is off over the speed, a panel for each direction; empty where there is too little to draw. */
    public Optional<LinePlot> plot() {
        List<SweepRow> up = new ArrayList<>();
        List<SweepRow> down = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            if (rows.get(i).deviation().isPresent()) {
                (slowedTo(i) ? down : up).add(rows.get(i));
            }
        }
        boolean bothWays = distinct(up) >= 2 && distinct(down) >= 2;
        List<LinePlot.Panel> panels = new ArrayList<>();
        if (bothWays) {
            panels.add(panel("after going faster", up));
            panels.add(panel("after going slower", down));
        } else {
            up.addAll(down);
            if (distinct(up) >= 2) {
                panels.add(panel("displayed less expected", up));
            }
        }
        if (panels.isEmpty()) {
            return Optional.empty();
        }
        double from = panels.stream().mapToDouble(panel -> panel.points().get(0).x()).min().orElseThrow();
        double to = panels.stream().mapToDouble(panel -> panel.points().get(panel.points().size() - 1).x()).max().orElseThrow();
        return Optional.of(new LinePlot(swept.title() + ": how far the display is off",
                "speed (" + swept.pattern().speed().unit().symbol() + ")", from, to, panels));
    }

    /** Not where every line is level. */
    public static boolean tellsMoreThanTheTable(LinePlot plot) {
        return plot.panels().stream().anyMatch(panel -> panel.points().stream().mapToDouble(LinePlot.Point::y).distinct().count() > 1);
    }

    private boolean slowedTo(int i) {
        return i > 0 ? rows.get(i).speedHz() < rows.get(i - 1).speedHz()
                : rows.size() > 1 && rows.get(0).speedHz() > rows.get(1).speedHz();
    }

    private static long distinct(List<SweepRow> some) {
        return some.stream().mapToDouble(SweepRow::speedHz).distinct().count();
    }

    private LinePlot.Panel panel(String name, List<SweepRow> some) {
        return new LinePlot.Panel(name, swept.reading().unit().symbol(), some.stream()
                .sorted(Comparator.comparingDouble(SweepRow::speedHz))
                .map(row -> new LinePlot.Point(swept.pattern().speed().inUnit(row.speedHz()), row.deviation().orElseThrow())).toList());
    }

    private record Swept(String of, String pattern, String output, Optional<String> vehicle, Instant ended, Object reading,
            String speedUnit, List<Row> rows, Optional<Double> rightFrom, Optional<Double> rightTo, Optional<Object> learned) {}

    private record Row(Instant at, double speed, double frequencyHz, double expected, double goodFrom, double goodTo,
            Optional<Double> displayed, Optional<Double> deviation, Optional<Double> deviationPercent, String verdict) {}

    /** For scripts; speeds in the pattern's unit, null where there is nothing. */
    public Object json(Optional<String> vehicle, Instant ended) {
        Optional<SweepRange> range = SweepRange.of(rows);
        return new Swept(swept.id(), swept.pattern().id(), swept.output().name(), vehicle, ended, ReadingWords.json(swept.reading()),
                swept.pattern().speed().unit().symbol(), rows.stream().map(this::row).toList(),
                range.map(right -> speed(right.fromHz())), range.map(right -> speed(right.toHz())), learned.map(LearnedText::json));
    }

    private Row row(SweepRow row) {
        return new Row(row.at(), speed(row.speedHz()), row.frequencyHz(), row.expected().value(), row.expected().leastShown(),
                row.expected().mostShown(), row.shown(), row.deviation(), row.deviationPercent(), row.verdict());
    }

    private double speed(double speedHz) {
        return swept.pattern().speed().inUnit(speedHz);
    }
}
