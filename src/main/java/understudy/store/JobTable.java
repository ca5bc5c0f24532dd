package understudy.store;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import understudy.text.Json;
import understudy.trace.Answer;
import understudy.trace.Entry;
import understudy.trace.EntryText;
import understudy.trace.EventWords;
import understudy.trace.Hunt;
import understudy.trace.Judgement;
import understudy.trace.Numbered;
import understudy.trace.Place;

/** What happened in a job, a row each, for a spreadsheet: RFC 4180. */
public final class JobTable {

    private static final List<String> COLUMNS = List.of("number", "at", "counts", "kind", "circuit", "point", "pin volts", "speed Hz",
            "frequency Hz", "level %", "expected", "least", "most", "unit", "display", "displayed", "verdict", "reason", "words");
    /** A spreadsheet computes what begins so, whoever typed it. */
    private static final String FORMULA = "[=+\\-@\\t\\r].*";

    private final Hunt hunt;

    private JobTable(Hunt hunt) {
        this.hunt = hunt;
    }

    public static String of(Hunt hunt) {
        JobTable csv = new JobTable(hunt);
        return Stream.concat(Stream.of(COLUMNS), hunt.events().stream().map(csv::row))
                .map(cells -> cells.stream().map(JobTable::cell).collect(Collectors.joining(",")) + "\r\n")
                .collect(Collectors.joining());
    }

    private static String cell(String text) {
        return text.matches("(?s).*[\",\r\n].*") ? '"' + text.replace("\"", "\"\"") + '"' : text;
    }

    private List<String> row(Numbered event) {
        Map<String, String> cells = new LinkedHashMap<>();
        cells.put("number", Integer.toString(event.number()));
        cells.put("at", event.at().toString());
        cells.put("counts", event.standing() ? "yes" : "withdrawn");
        cells.put("kind", EntryText.of(event.entry()).kind());
        if (event.entry() instanceof Entry.PinMeasured pin) {
            place(cells, pin.place());
            cells.put("pin volts", number(pin.volts()));
        } else if (event.entry() instanceof Entry.Injected injected) {
            injected(cells, injected);
        } else {
            cells.put("words", typed(EventWords.step(hunt, event)));
        }
        return COLUMNS.stream().map(column -> cells.getOrDefault(column, "")).toList();
    }

    private void place(Map<String, String> cells, Place place) {
        cells.put("circuit", place.onReference() ? "reference" : "suspect");
        cells.put("point", typed(hunt.name(place)));
    }

    private void injected(Map<String, String> cells, Entry.Injected injected) {
        place(cells, injected.place());
        cells.put("speed Hz", number(injected.speedHz()));
        cells.put("frequency Hz", number(injected.frequencyHz()));
        cells.put("level %", number(100 * injected.levelPart()));
        cells.put("expected", number(injected.expected().value()));
        cells.put("least", number(injected.expected().leastShown()));
        cells.put("most", number(injected.expected().mostShown()));
        cells.put("unit", injected.expected().unit().symbol());
        cells.put("display", injected.answer().kind().words());
        if (injected.answer().kind() == Answer.Kind.VALUE) {
            cells.put("displayed", number(injected.answer().value()));
        }
        cells.put("verdict", EventWords.verdict(injected));
        cells.put("reason", Judgement.of(injected).reason());
        List<String> words = new ArrayList<>();
        injected.moved().ifPresent(moved -> words.add("moved: " + hunt.circuitOf(injected.place()).suspects().get(moved).name()));
        injected.clipPart().ifPresent(part -> words.add(EventWords.percent(part) + " of the volts at the clips"));
        cells.put("words", String.join("; ", words));
    }

    private static String number(double value) {
        return Json.number(value).toPlainString();
    }

    private static String typed(String text) {
        return text.matches("(?s)" + FORMULA) ? "'" + text : text;
    }
}
