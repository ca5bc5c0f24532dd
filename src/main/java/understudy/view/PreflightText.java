package understudy.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import understudy.bench.Hookup;
import understudy.pattern.Speed;
import understudy.plot.LinePlot;
import understudy.preflight.AtSpeed;
import understudy.preflight.Decoding;
import understudy.preflight.Limit;
import understudy.preflight.Preflight;
import understudy.preflight.RangeEnd;
import understudy.preflight.Setup;
import understudy.quantity.NumberText;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.refusal.Refusal;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;
import understudy.rig.Amounts;
import understudy.rig.NamedInput;
import understudy.store.NamedRig;
import understudy.store.RigWords;
import understudy.text.Paragraph;
import understudy.text.Table;

/** What preflight found, on one page, as a plot and as JSON. */
public final class PreflightText {

    /** Rows of the table; all speeds are in the plot and in the JSON. */
    private static final int MOST_ROWS = 14;

    private final Preflight found;
    private final Setup setup;
    private final Speed speed;
    private final NamedRig rig;
    private final NamedInput input;
    private final Wording wording;
    private final List<String> breaches;

    /** @param breaches why the rig is refused when it is to play; empty when it is not */
    public PreflightText(Preflight found, Hookup hookup, List<Refusal> breaches, Wording wording) {
        this.found = found;
        this.setup = found.setup();
        this.speed = setup.pattern().speed();
        this.rig = hookup.rig();
        this.input = hookup.input();
        this.wording = wording;
        this.breaches = breaches.stream().map(breach -> breach.text(wording)).toList();
    }

    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(title());
        lines.addAll(Paragraph.lines("Input: ", "  ", NamedInput.words(input.input()) + ". " + input.kind().source()));
        lines.addAll(Paragraph.lines("Rig: ", "  ", RigWords.output(rig) + "; " + RigWords.divider(rig)));
        lines.addAll(Paragraph.lines("Played: ", "  ", played()));
        lines.add("");
        lines.addAll(Paragraph.lines("It " + found.summary() + "."));
        Decoding at = found.chosen().worst();
        if (at.isDecoded()) {
            lines.addAll(Paragraph.lines("At " + speed.print(at.speedHz()) + " the worst edge, at " + degrees(at.worstAtDeg())
                    + ", has " + NumberText.decibels(at.marginDb()) + " to spare; edges come up to " + degrees(Math.abs(at.timingErrorDeg()))
                    + (at.timingErrorDeg() < 0 ? " early." : " late.")));
        }
        if (at.isDecoded() && at.oscillations() > 0) {
            lines.addAll(Paragraph.lines("Of each burst at least " + at.oscillations()
                    + (at.oscillations() == 1 ? " swing is" : " swings are") + " beyond what the input needs; the pattern's own noise is left aside."));
        }
        lines.addAll(ends());
        found.overview().stream().map(AtSpeed::worst).filter(Decoding::clipped).mapToDouble(Decoding::speedHz).max().ifPresent(hz ->
                lines.addAll(Paragraph.lines("Up to " + speed.print(hz) + " full scale is not enough to undo all droop.")));
        breaches.forEach(breach -> lines.addAll(Paragraph.lines("This rig will not play: ", "  ", breach + ".")));
        lines.add("");
        lines.addAll(table());
        return lines;
    }

    private String title() {
        return setup.pattern().title() + ": output " + setup.output().name() + ", from rig " + rig.name() + " into "
                + input.kind().label();
    }

    private String played() {
        String level = setup.level() == 1 ? ""
                : ", the pattern's volts times " + new Quantity(setup.level() * 100, Unit.PERCENT).rounded(3);
        return "at most " + Amounts.print(setup.askedPinVolts(), Unit.VOLT) + " either way between the pins" + level + "; this rig can give "
                + Amounts.print(setup.mostPinVolts(), Unit.VOLT) + "; " + setup.rateHz() + " samples a second; droop is undone as far as the"
                + " headroom goes";
    }

    private List<String> ends() {
        List<String> lines = new ArrayList<>();
        if (found.low().isEmpty() || found.high().isEmpty()) {
            found.reason().ifPresent(limit -> lines.addAll(Paragraph.lines("Why: ", "  ", limit.words() + ".")));
            lines.addAll(remedies("At " + speed.print(found.chosen().speedHz()) + " this would help:", words(found.remedies())));
            return lines;
        }
        lines.addAll(end("Below ", "down to ", found.low().get()));
        lines.addAll(end("Above ", "up to ", found.high().get()));
        return lines;
    }

    private List<String> end(String side, String to, RangeEnd end) {
        List<String> lines = new ArrayList<>();
        String limit = end.limit().map(Limit::words).orElse("not looked into");
        lines.addAll(Paragraph.lines(side + speed.print(end.speedHz()) + ": ", "  ", limit + "."));
        if (end.limit().isPresent() && end.limit().get() != Limit.PATTERN) {
            lines.addAll(remedies("This would widen it:", end.widenings().stream()
                    .map(wider -> wider.remedy().text(wording) + " (" + to + speed.print(wider.speedHz()) + ")").toList()));
        }
        return lines;
    }

    private List<String> words(List<Remedy> remedies) {
        return remedies.stream().map(remedy -> remedy.text(wording)).toList();
    }

    private static List<String> remedies(String heading, List<String> remedies) {
        List<String> lines = new ArrayList<>();
        if (remedies.isEmpty()) {
            lines.add("  Nothing that was tried on this side of the clips helps.");
            return lines;
        }
        lines.add("  " + heading);
        remedies.forEach(remedy -> lines.addAll(Paragraph.lines("  - ", "    ", remedy)));
        return lines;
    }

    private List<String> table() {
        Table table = found.toleranced()
                ? new Table().row("speed", "the input", "to spare", "", "nominal", "edges late by", "counted a turn")
                : new Table().row("speed", "the input", "to spare", "", "edges late by", "counted a turn");
        List<AtSpeed> all = found.overview();
        int every = (all.size() + MOST_ROWS - 1) / MOST_ROWS;
        for (int i = 0; i < all.size(); i++) {
            if (i % every == 0 || i == all.size() - 1 || all.get(i).equals(found.chosen())) {
                Decoding one = all.get(i).worst();
                List<String> cells = new ArrayList<>(List.of(speed.print(one.speedHz()), one.verdict().words(),
                        Amounts.print(one.marginVolts(), Unit.VOLT), NumberText.decibels(one.marginDb())));
                if (found.toleranced()) {
                    cells.add(Amounts.print(all.get(i).nominal().marginVolts(), Unit.VOLT));
                }
                cells.add(Double.isNaN(one.timingErrorDeg()) ? "-" : degrees(one.timingErrorDeg()));
                cells.add(count(one.countedPerTurn()) + " of " + count(one.expectedPerTurn()));
                table.row(cells.toArray(new String[0]));
            }
        }
        return table.lines();
    }

    /** Margin over speed, and how late the edges come. */
    public LinePlot plot() {
        List<LinePlot.Point> margins = new ArrayList<>();
        List<LinePlot.Point> errors = new ArrayList<>();
        for (AtSpeed both : found.overview()) {
            Decoding one = both.worst();
            double x = speed.inUnit(one.speedHz());
            margins.add(new LinePlot.Point(x, one.marginVolts()));
            if (!Double.isNaN(one.timingErrorDeg())) {
                errors.add(new LinePlot.Point(x, one.timingErrorDeg()));
            }
        }
        List<LinePlot.Panel> panels = new ArrayList<>();
        panels.add(new LinePlot.Panel("to spare at the worst edge", "V", margins));
        if (errors.size() > 1) {
            panels.add(new LinePlot.Panel("worst edge late by", "deg", errors));
        }
        double from = speed.inUnit(found.overview().get(0).speedHz());
        double to = speed.inUnit(found.overview().get(found.overview().size() - 1).speedHz());
        String title = setup.pattern().id() + ", rig " + rig.name() + ", " + input.kind().label();
        return new LinePlot(title, "speed, " + speed.unit().symbol(), from, to, panels);
    }

    private record Judged(String pattern, String output, String rig, boolean calibrated, String input, int rateHz, double level,
            double mostPinVolts, double askedPinVolts, String speedUnit, boolean tolerances, boolean usable, Optional<End> from,
            Optional<End> to, Optional<Nominal> nominal, Optional<String> reason, List<String> remedies, List<String> breaches,
            String summary, At atSpeed, List<At> speeds) {}

    private record Nominal(double from, double to) {}

    private record End(double speed, Optional<String> limit, List<Wider> wouldWiden) {}

    private record Wider(String change, double speed) {}

    private record At(double speed, String verdict, boolean decoded, double countedPerTurn, double expectedPerTurn, double marginVolts,
            double nominalMarginVolts, boolean nominalDecoded, double marginDb, double worstAtDeg, double timingErrorDeg,
            double meanLateDeg, int oscillations, boolean headroomExceeded) {}

    /** For scripts; speeds in the pattern's unit, null where there is no number. */
    public Object json() {
        return new Judged(setup.pattern().id(), setup.output().name(), rig.name(), rig.calibrated(), input.kind().label(), setup.rateHz(),
                setup.level(), setup.mostPinVolts(), setup.askedPinVolts(), speed.unit().symbol(), found.toleranced(),
                found.low().isPresent(), found.low().map(this::end), found.high().map(this::end),
                found.nominal().map(span -> new Nominal(speed.inUnit(span.fromHz()), speed.inUnit(span.toHz()))),
                found.reason().map(PreflightText::key), words(found.remedies()), breaches, found.summary(), at(found.chosen()),
                found.overview().stream().map(this::at).toList());
    }

    private End end(RangeEnd end) {
        return new End(speed.inUnit(end.speedHz()), end.limit().map(PreflightText::key), end.widenings().stream()
                .map(wider -> new Wider(wider.remedy().text(wording), speed.inUnit(wider.speedHz()))).toList());
    }

    private At at(AtSpeed both) {
        Decoding one = both.worst();
        return new At(speed.inUnit(one.speedHz()), key(one.verdict()), one.isDecoded(), one.countedPerTurn(), one.expectedPerTurn(),
                one.marginVolts(), both.nominal().marginVolts(), both.nominal().isDecoded(), one.marginDb(), one.worstAtDeg(),
                one.timingErrorDeg(), one.meanLateDeg(), one.oscillations(), one.clipped());
    }

    private static String key(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String degrees(double degrees) {
        return String.format(Locale.ROOT, "%.3f deg", degrees).replaceFirst("\\.?0+ deg$", " deg").replace("-0 deg", "0 deg");
    }

    private static String count(double count) {
        return String.format(Locale.ROOT, "%.1f", count).replaceFirst("\\.0$", "");
    }
}
