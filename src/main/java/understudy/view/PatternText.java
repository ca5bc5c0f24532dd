package understudy.view;

import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;
import understudy.bench.SignalPlan;
import understudy.pattern.Fault;
import understudy.pattern.Hazard;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Speed;
import understudy.quantity.NumberText;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Deed;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;
import understudy.text.Json;
import understudy.text.Paragraph;
import understudy.text.Table;
import understudy.wave.Fit;
import understudy.wave.OutputFacts;

/** What {@code show} tells about a pattern, for people and for scripts. */
public final class PatternText {

    /** Intervals closer than this are shown as one row: below what is printed. */
    private static final double SAME_DEG = 5e-4;

    private final Pattern pattern;
    private final double speedHz;
    private final Wording wording;
    private final List<OutputFacts> outputs;
    private final double[] speedsHz;

    /** @param speedHz turns per second at which intervals are told in seconds */
    public PatternText(Pattern pattern, double speedHz, Wording wording) {
        this.pattern = pattern;
        this.speedHz = speedHz;
        this.wording = wording;
        this.outputs = OutputFacts.of(pattern);
        Speed speed = pattern.speed();
        this.speedsHz = DoubleStream.of(speed.fromHz(), speed.defaultHz(), speedHz, speed.toHz()).sorted().distinct().toArray();
    }

    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(pattern.title());
        lines.add("");
        lines.addAll(Paragraph.lines(pattern.purpose()));
        lines.addAll(Paragraph.lines("Source: ", "  ", pattern.source()));
        if (!pattern.hazards().isEmpty() || !pattern.cautions().isEmpty()) {
            lines.addAll(Paragraph.lines("Cautions: ", "  ", cautions()));
        }
        lines.add("Speed: " + range(pattern.speed()) + ", "
                + pattern.speed().print(pattern.speed().defaultHz()) + " unless asked otherwise");
        lines.add("");
        for (int i = 0; i < outputs.size(); i++) {
            lines.addAll(Paragraph.lines("Output " + (i + 1) + ", " + outputs.get(i).output() + ": ", "  ",
                    SignalWords.of(pattern.outputs().get(i), pattern.speed()) + "; "
                            + NumberText.of(outputs.get(i).lowestVolts(), Unit.VOLT) + " to " + NumberText.of(outputs.get(i).highestVolts(), Unit.VOLT) + " at most"));
        }
        lines.addAll(faults());
        lines.add("");
        lines.addAll(rates());
        lines.add("");
        lines.addAll(swings());
        for (OutputFacts output : outputs) {
            lines.add("");
            lines.addAll(intervals(output));
        }
        return lines;
    }

    private String cautions() {
        List<String> about = new ArrayList<>(pattern.hazards().stream().map(Hazard::title).toList());
        about.addAll(pattern.cautions());
        return String.join("; ", about) + Remedy.of(" (to read them: ").perform(Deed.READ_CAUTIONS, pattern.id()).then(")").text(wording);
    }

    private List<String> faults() {
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < pattern.faults().size(); i++) {
            Fault.Place place = pattern.faults().get(i).place();
            lines.add("Fault " + (i + 1) + ": " + place.name() + ", on " + place.output() + (place.on() ? "" : ", switched off"));
        }
        return lines;
    }

    private List<String> rates() {
        Table table = new Table();
        List<String> head = new ArrayList<>(List.of("Events", "a turn"));
        for (double hz : speedsHz) {
            head.add("at " + pattern.speed().print(hz));
        }
        table.row(head);
        for (OutputFacts output : outputs) {
            List<String> row = new ArrayList<>(List.of(output.output(), perTurn(output)));
            for (double hz : speedsHz) {
                row.add(NumberText.of(output.eventRateHz(hz), Unit.HERTZ));
            }
            table.row(row);
        }
        return table.lines();
    }

    /** What is left of quick shapes between the samples. */
    private List<String> swings() {
        Table table = new Table();
        List<String> head = new ArrayList<>(List.of("Swing kept"));
        for (double hz : speedsHz) {
            head.add("at " + pattern.speed().print(hz));
        }
        table.row(head);
        for (int i = 0; i < outputs.size(); i++) {
            List<String> row = new ArrayList<>(List.of(outputs.get(i).output()));
            for (double hz : speedsHz) {
                row.add(SignalWords.percent(swingKept(outputs.get(i), hz)));
            }
            table.row(row);
        }
        List<String> lines = new ArrayList<>(table.lines());
        lines.addAll(Paragraph.lines("(at " + SignalPlan.DEFAULT_RATE_HZ
                + Remedy.of(" samples a second; ").set(Control.RATE).then(" of play and render raises it)").text(wording)));
        return lines;
    }

    private static String perTurn(OutputFacts output) {
        return Double.isNaN(output.eventsPerTurn()) ? "-" : Json.number(output.eventsPerTurn()).round(
                new MathContext(6)).toPlainString();
    }

    /** Equal intervals in a row take one line. */
    private List<String> intervals(OutputFacts output) {
        List<Double> intervals = output.intervalsDeg();
        Table table = new Table().row("Events of " + output.output(), "to the next", "at " + pattern.speed().print(speedHz));
        int start = 0;
        for (int i = 1; i <= intervals.size(); i++) {
            if (i == intervals.size() || Math.abs(intervals.get(i) - intervals.get(start)) > SAME_DEG) {
                String which = i - start == 1 ? "" + i : (start + 1) + " to " + i;
                table.row(which, NumberText.of(rounded(intervals.get(start)), Unit.DEGREE, 6), time(output, intervals.get(start)));
                start = i;
            }
        }
        return table.lines();
    }

    private static double rounded(double degrees) {
        return Math.round(degrees * 1000) / 1000.0;
    }

    private String time(OutputFacts output, double intervalDeg) {
        double cycles = intervalDeg / output.overDeg();
        double cyclesHz = Double.isNaN(output.fixedHz()) ? output.cyclesPerTurn() * speedHz : output.fixedHz();
        return cyclesHz == 0 ? "never" : NumberText.of(cycles / cyclesHz, Unit.SECOND);
    }

    private record Listed(String id, String title, Speeds speed, List<String> outputs, List<String> hazards) {}

    private record Speeds(String unit, double default_, double from, double to) {}

    private record Facts(String id, String title, Speeds speed, List<Played> outputs, List<String> hazards, String purpose, String source,
            List<String> cautions, List<NamedFault> faults) {}

    private record NamedFault(String name, String output, boolean on) {}

    private record Played(String name, double overDeg, double lowestVolts, double highestVolts, double eventsPerTurn,
            List<Rate> eventRates, List<Transition> events, List<Double> intervalsDeg) {}

    private record Rate(double speed, double hz, double swingKept) {}

    private record Transition(double angleDeg, int tooth, String kind) {}

    /** For scripts; speeds in the pattern's unit, null where there is no number. */
    public Object json() {
        return new Facts(pattern.id(), pattern.title(), speeds(pattern.speed()), outputs.stream().map(this::json).toList(),
                hazards(pattern), pattern.purpose(), pattern.source(), pattern.cautions(), pattern.faults().stream()
                        .map(fault -> new NamedFault(fault.place().name(), fault.place().output(), fault.place().on())).toList());
    }

    private Played json(OutputFacts output) {
        return new Played(output.output(), output.overDeg(), output.lowestVolts(), output.highestVolts(), output.eventsPerTurn(),
                DoubleStream.of(speedsHz).mapToObj(hz ->
                        new Rate(pattern.speed().inUnit(hz), output.eventRateHz(hz), swingKept(output, hz))).toList(),
                output.events().stream().map(event -> new Transition(event.angleDeg(), event.tooth(),
                        event.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'))).toList(),
                output.intervalsDeg());
    }

    private double swingKept(OutputFacts output, double hz) {
        return Fit.of(pattern, SignalPlan.DEFAULT_RATE_HZ, hz).get(outputs.indexOf(output)).swingLeft();
    }

    /** "60 rpm to 8000 rpm". */
    public static String range(Speed speed) {
        return speed.print(speed.fromHz()) + " to " + speed.print(speed.toHz());
    }

    /** What a script needs to choose a pattern and a speed. */
    public static Object listed(Pattern pattern) {
        return new Listed(pattern.id(), pattern.title(), speeds(pattern.speed()), pattern.outputs().stream().map(Output::name).toList(),
                hazards(pattern));
    }

    private static Speeds speeds(Speed speed) {
        return new Speeds(speed.unit().symbol(), speed.inUnit(speed.defaultHz()), speed.inUnit(speed.fromHz()), speed.inUnit(speed.toHz()));
    }

    private static List<String> hazards(Pattern pattern) {
        return pattern.hazards().stream().map(Hazard::key).toList();
    }
}
