package understudy.report;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;
import understudy.trace.Verdict;

/** A report as one HTML file that is XML too: style and drawings are inside, nothing is fetched. */
final class ReportHtml {

    private final Markup html;
    private final UnaryOperator<String> letters;

    private ReportHtml(UnaryOperator<String> letters) {
        this.html = new Markup(letters);
        this.letters = letters;
    }

    /**
     * @param letters what is to become of letters that not every font can show
     * @param remark  on this file, if there is one to make
     */
    static String of(Report report, Paper paper, UnaryOperator<String> letters, Optional<String> remark) {
        return new ReportHtml(letters).document(report, paper, remark);
    }

    private String document(Report report, Paper paper, Optional<String> remark) {
        html.open("html", "xmlns", "http://www.w3.org/1999/xhtml", "lang", "en");
        html.open("head").empty("meta", "charset", "utf-8");
        html.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
        html.empty("meta", "http-equiv", "Content-Security-Policy", "content", "default-src 'none'; style-src 'unsafe-inline'");
        html.leaf("title", report.title());
        html.open("style").add(css(paper)).close().close();
        html.open("body").leaf("h1", report.title());
        report.warnings().forEach(warning -> html.leaf("p", warning, "class", "warning"));
        remark.ifPresent(words -> html.leaf("p", words, "class", "warning"));
        report.sections().forEach(this::section);
        html.close().close();
        return "<!DOCTYPE html>\n" + html + "\n";
    }

    private static String css(Paper paper) {
        try (InputStream in = ReportHtml.class.getResourceAsStream("report.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("PAPER", paper.word());
        } catch (IOException e) {
            throw new IllegalStateException("the program is not whole: report.css can't be read", e);
        }
    }

    private void section(Report.Section section) {
        html.open("section").leaf("h2", section.title());
        section.parts().forEach(this::part);
        html.close().add("\n");
    }

    private void part(Part part) {
        if (part instanceof Part.Sentence sentence) {
            html.leaf("p", sentence.words());
        } else if (part instanceof Part.Bullets bullets) {
            html.open("ul");
            bullets.lines().forEach(line -> html.leaf("li", line));
            html.close();
        } else if (part instanceof Part.Facts facts) {
            html.open("table", "class", "facts").open("tbody");
            facts.facts().forEach(fact -> html.open("tr").leaf("th", fact.name(), "scope", "row").leaf("td", fact.value()).close());
            html.close().close();
        } else if (part instanceof Part.Ticks ticks) {
            ticks(ticks.ticks());
        } else if (part instanceof Part.Drawing drawing) {
            drawing(drawing.drawing());
        } else if (part instanceof Part.Injections injections) {
            injections(injections.rows());
        }
    }

    private void ticks(List<Part.Tick> ticks) {
        html.open("table", "class", "ticks").open("thead").open("tr");
        List.of("Proven", "What", "How").forEach(head -> html.leaf("th", head, "scope", "col"));
        html.close().close().open("tbody");
        for (Part.Tick tick : ticks) {
            html.open("tr").leaf("td", tick.how().isPresent() ? "yes" : "NO", "class", tick.how().isPresent() ? "good" : "bad");
            html.leaf("td", tick.demand()).leaf("td", tick.how().orElse("-")).close();
        }
        html.close().close();
    }

    private void drawing(CircuitDrawing drawing) {
        CircuitSvg.rows(drawing, letters).forEach(row -> html.open("div", "class", "row").add(row).close());
        html.open("div", "class", "row").add(CircuitSvg.legend()).close();
    }

    private void injections(List<InjectionRow> rows) {
        html.open("table", "class", "injections").open("thead").open("tr");
        List.of("Step", "Injected at", "Played", "Expected", "Displayed", "Verdict, and why")
                .forEach(head -> html.leaf("th", head, "scope", "col"));
        html.close().close().open("tbody");
        String stage = "";
        for (InjectionRow row : rows) {
            if (!row.stage().equals(stage)) {
                stage = row.stage();
                html.open("tr", "class", "stage").leaf("th", stage, "colspan", 6).close();
            }
            row(row);
        }
        html.close().close();
    }

    private void row(InjectionRow row) {
        boolean withdrawn = row.withdrawn().isPresent();
        html.open("tr", "class", withdrawn ? "withdrawn" : row.verdict().name().toLowerCase(Locale.ROOT));
        html.open("td");
        struck(withdrawn, row.number() + "");
        html.empty("br").leaf("small", row.at()).close();
        cell(withdrawn, List.of(row.where()));
        cell(withdrawn, row.played());
        cell(withdrawn, List.of(row.expected()));
        cell(withdrawn, List.of(row.displayed()));
        html.open("td");
        if (withdrawn) {
            struck(true, word(row.verdict()));
            html.empty("br").leaf("small", "Withdrawn: \"" + row.withdrawn().get() + "\"");
        } else {
            html.leaf("span", word(row.verdict()), "class", "word").empty("br").leaf("small", row.meaning());
        }
        html.close().close();
    }

    /** The first line counts; the others tell more. */
    private void cell(boolean withdrawn, List<String> lines) {
        html.open("td");
        struck(withdrawn, lines.get(0));
        for (String line : lines.subList(1, lines.size())) {
            html.empty("br").open("small");
            struck(withdrawn, line);
            html.close();
        }
        html.close();
    }

    private void struck(boolean withdrawn, String words) {
        if (withdrawn) {
            html.leaf("s", words);
        } else {
            html.text(words);
        }
    }

    private static String word(Verdict verdict) {
        return verdict.name().toLowerCase(Locale.ROOT);
    }
}
