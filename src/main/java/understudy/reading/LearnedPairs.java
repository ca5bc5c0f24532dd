package understudy.reading;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refusals;
import understudy.refusal.Result;
import understudy.text.Problems;
import understudy.text.TextFile;

/**
 * Reads pairs of what was injected and what was displayed: "100 Hz: 16 km/h, 200 Hz: 32", or a file with one on each
 * line, where # starts a remark. With a pattern the first of each pair is its speed, else events a second.
 */
public final class LearnedPairs {

    private static final Range FREQUENCY = new Range(0, 200_000, Unit.HERTZ);
    private static final String EXAMPLE = "write pairs like \"100 Hz: 16 km/h, 200 Hz: 32\"";

    private final Injected injected;
    private final Optional<DisplayUnit> declared;
    private final Refusals given;

    /** @param declared the display's unit, where it is known without the pairs */
    public LearnedPairs(Injected injected, Optional<DisplayUnit> declared, Refusals given) {
        this.injected = injected;
        this.declared = declared;
        this.given = given;
    }

    /** In the order taken. */
    public record Read(DisplayUnit unit, Injected injected, List<Injected.Point> points, List<Pair> pairs) {}

    /** One as it was written, and where. */
    private record Written(Location where, String text) {}

    /** Complete unless something was given that can't be read. */
    public Read read(String textOrFile) {
        List<Written> written = written(textOrFile);
        if (written.isEmpty()) {
            given.add(Control.PAIRS, "there are no pairs in \"" + textOrFile + "\"", EXAMPLE + ", or name a file of such lines");
        }
        Optional<DisplayUnit> named = written.stream().flatMap(pair -> unitOf(pair.text()).stream()).findFirst();
        Optional<DisplayUnit> known = declared.isPresent() ? declared : named;
        if (known.isEmpty() && !written.isEmpty()) {
            given.add(Control.PAIRS, "no number has a unit", "write it behind one of them at least, as in \"100 Hz: 16 km/h, 200 Hz: 32\"");
        }
        DisplayUnit unit = known.orElse(DisplayUnit.KMH);
        List<Injected.Point> points = new ArrayList<>();
        List<Pair> pairs = new ArrayList<>();
        for (Written one : written) {
            int colon = one.text().indexOf(':');
            if (colon < 0) {
                given.add(new Refusal(one.where(), "\"" + one.text() + "\" is no pair", EXAMPLE));
                continue;
            }
            Optional<Injected.Point> point = given.attempt(one.where(), () -> point(one.text().substring(0, colon).strip()));
            Optional<Double> shown = shown(one, one.text().substring(colon + 1).strip(), unit);
            if (point.isPresent() && shown.isPresent()) {
                points.add(point.get());
                pairs.add(new Pair(point.get().frequencyHz(), shown.get()));
            }
        }
        enough(written, pairs);
        return new Read(unit, injected, points, pairs);
    }

    private void enough(List<Written> written, List<Pair> pairs) {
        if (written.size() > Learned.MOST_PAIRS) {
            given.add(Control.PAIRS, "there are " + written.size() + " pairs", "at most " + Learned.MOST_PAIRS + " can be used");
        } else if (!pairs.isEmpty() && pairs.size() == written.size() && pairs.stream().mapToDouble(Pair::frequencyHz).distinct().count() < 2) {
            given.add(Control.PAIRS, "a scale needs two different frequencies at least", "inject a second one, far from the first");
        }
    }

    private List<Written> written(String textOrFile) {
        List<Written> pairs = new ArrayList<>();
        if (!isFile(textOrFile)) {
            for (String text : textOrFile.split("[,;\n]")) {
                if (!text.isBlank()) {
                    pairs.add(new Written(Location.named("pair " + (pairs.size() + 1)), text.strip()));
                }
            }
        } else {
            List<String> lines = lines(textOrFile);
            for (int i = 0; i < lines.size(); i++) {
                String text = lines.get(i).replaceFirst("#.*", "").strip();
                if (!text.isEmpty()) {
                    pairs.add(new Written(Location.named(textOrFile + ":" + (i + 1)), text));
                }
            }
        }
        return pairs;
    }

    private static boolean isFile(String text) {
        try {
            return !text.contains(":") && !text.isBlank() || Files.isRegularFile(Path.of(text));
        } catch (InvalidPathException e) {
            return false;
        }
    }

    private List<String> lines(String file) {
        Problems problems = new Problems(file);
        List<String> lines = TextFile.read(file, problems).map(text -> text.lines().toList()).orElse(List.of());
        given.value(Result.of(Optional.of(lines), problems.inOrder()));
        given.refuse();
        return lines;
    }

    private Injected.Point point(String written) {
        return injected.pattern().isPresent()
                ? injected.atSpeed(injected.pattern().get().speed().typedHz(written))
                : injected.atHz(FREQUENCY.typed(written));
    }

    private static Optional<DisplayUnit> unitOf(String pair) {
        String shown = pair.substring(pair.indexOf(':') + 1).strip();
        return Arrays.stream(DisplayUnit.values()).filter(unit -> shown.endsWith(unit.symbol()))
                .max(Comparator.comparingInt(unit -> unit.symbol().length()));
    }

    private Optional<Double> shown(Written one, String text, DisplayUnit unit) {
        Displayed shown = Displayed.parse(text, unit);
        if (shown instanceof Displayed.Value value) {
            return Optional.of(value.shown());
        }
        if (shown instanceof Displayed.Refused refused) {
            given.add(new Refusal(one.where(), refused.wrong(), refused.right()));
        } else {
            given.add(new Refusal(one.where(), "\"" + text + "\" is not in " + unit.symbol() + ", as the others are",
                    "write every number as the display shows it, all in one unit"));
        }
        return Optional.empty();
    }
}
