package understudy.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import understudy.reading.DisplayUnit;
import understudy.reading.Expected;
import understudy.reading.Injected;
import understudy.reading.Reading;
import understudy.refusal.Control;
import understudy.refusal.Refusals;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;
import understudy.text.Json;
import understudy.text.Paragraph;
import understudy.text.Table;

/** What a display should show at each of some points, in text, as a table for the wall, as CSV and as JSON. */
public final class ExpectedText {

    private final Reading reading;
    private final boolean ownReading;
    private final Injected injected;
    private final List<Injected.Point> points;
    private final boolean asksWhatToInject;
    private final Wording wording;

    /** @param ownReading whether nobody said what is shown, so that the pattern's own speed is taken for it */
    public ExpectedText(Reading reading, boolean ownReading, Injected injected, List<Injected.Point> points, boolean asksWhatToInject,
            Wording wording) {
        this.reading = reading;
        this.ownReading = ownReading;
        this.injected = injected;
        this.points = points;
        this.asksWhatToInject = asksWhatToInject;
        this.wording = wording;
    }

    /** One that can't be told spoils the answer; a table may have some. */
    public void refuseWhatIsBeyond(Refusals given) {
        if (points.stream().allMatch(point -> expected(point).isEmpty())) {
            given.add(Control.READING, "at " + Injected.hertz(points.get(0)) + " the scale says nothing of what is shown",
                    "keep within the ends of its table");
        }
    }

    private Optional<Expected> expected(Injected.Point point) {
        return reading.expected(point.frequencyHz());
    }

    public List<String> answer() {
        Injected.Point point = points.get(0);
        Expected expected = expected(point).orElseThrow();
        boolean twoNumbers = !injected.words(point).equals(Injected.hertz(point));
        String what = injected.words(point) + (twoNumbers ? ", that is " + Injected.hertz(point) + "," : "");
        List<String> lines = new ArrayList<>(Paragraph.lines(asksWhatToInject
                ? "To show " + reading.unit().print(expected.value(), expected.step()) + ": inject " + what.replaceAll(",$", "") + "."
                : "At " + what + " the display should show " + expected + "."));
        lines.addAll(Paragraph.lines("Taken: ", "  ", ReadingWords.of(reading) + "."
                + (ownReading ? " That is how the pattern is made; say with "
                + Remedy.of("").set(Control.READING).text(wording) + " if the module is not." : "")));
        return lines;
    }

    public List<String> table() {
        DisplayUnit unit = reading.unit();
        List<String> lines = new ArrayList<>();
        lines.add("What the display should show");
        lines.addAll(Paragraph.lines("  ", "  ", ReadingWords.of(reading)));
        lines.add("");
        Table table = new Table();
        List<String> head = new ArrayList<>(List.of("Frequency", "Shows", "Good from", "to"));
        injected.pattern().ifPresent(pattern -> head.add(0, "Speed"));
        table.row(head);
        for (Injected.Point point : points) {
            List<String> row = new ArrayList<>(List.of(Injected.hertz(point)));
            if (injected.pattern().isPresent()) {
                row.add(0, injected.words(point));
            }
            row.addAll(expected(point).map(expected -> List.of(unit.print(expected.value(), expected.step()),
                    unit.print(expected.leastShown(), expected.step()), unit.print(expected.mostShown(), expected.step())))
                    .orElse(List.of("-", "-", "-")));
            table.row(row);
        }
        lines.addAll(table.lines());
        return lines;
    }

    public List<String> csv() {
        String unit = " (" + reading.unit().symbol() + ")";
        List<String> lines = new ArrayList<>();
        lines.add(injected.pattern().map(pattern -> "speed (" + pattern.speed().unit().symbol() + "),").orElse("")
                + "frequency (Hz),shows" + unit + ",good from" + unit + ",to" + unit);
        for (Injected.Point point : points) {
            lines.add(injected.pattern().map(pattern -> plain(pattern.speed().inUnit(point.speedHz().orElseThrow())) + ",").orElse("")
                    + plain(point.frequencyHz()) + ","
                    + expected(point).map(expected -> plain(expected.value()) + "," + plain(expected.leastShown()) + ","
                            + plain(expected.mostShown())).orElse(",,"));
        }
        return lines;
    }

    private static String plain(double number) {
        return Json.number(number).toPlainString();
    }

    private record Answered(Object reading, Optional<String> speedUnit, List<Point> points) {}

    private record Point(double frequencyHz, OptionalDouble speed, Optional<Double> value, Optional<Double> goodFrom, Optional<Double> goodTo) {}

    /** For scripts; speeds in the pattern's unit, null where nothing is known. */
    public Object json() {
        return new Answered(ReadingWords.json(reading), injected.pattern().map(pattern -> pattern.speed().unit().symbol()),
                points.stream().map(this::json).toList());
    }

    private Point json(Injected.Point point) {
        OptionalDouble speed = injected.pattern().map(pattern -> OptionalDouble.of(pattern.speed().inUnit(point.speedHz().orElseThrow())))
                .orElse(OptionalDouble.empty());
        Optional<Expected> expected = expected(point);
        return new Point(point.frequencyHz(), speed, expected.map(Expected::value), expected.map(Expected::leastShown),
                expected.map(Expected::mostShown));
    }
}
