package understudy.guide;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import understudy.refusal.Refused;
import understudy.text.WholeFile;

/** The guide as HTML files, each complete in itself: none asks for another file, nor for anything on a network. */
public final class GuideHtml {

    /** The list of all pages. */
    public static final String INDEX = "index";

    private static final String TITLE = "Understudy: the guide";
    private static final String MARK = "<meta name=\"generator\" content=\"Understudy, guide\">";

    private GuideHtml() {}

    /** The file of a page, or of the index, in that folder. */
    public static Path file(Path folder, String name) {
        return folder.resolve(name + ".html");
    }

    /** A file of another origin that {@link #write} would replace. */
    public static Optional<Path> foreign(Path folder) throws IOException {
        for (String name : documents().keySet()) {
            Path file = file(folder, name);
            if (Files.exists(file) && !new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1).contains(MARK)) {
                return Optional.of(file);
            }
        }
        return Optional.empty();
    }

    /** Writes all pages into a folder, which is made if need be; each file appears whole or not at all. */
    public static void write(Path folder) throws IOException {
        Files.createDirectories(folder);
        for (Map.Entry<String, String> document : documents().entrySet()) {
            WholeFile.write(document.getValue(), file(folder, document.getKey()));
        }
    }

    private static Map<String, String> documents() {
        List<Page> pages = Guide.pages();
        Map<String, String> documents = new LinkedHashMap<>();
        documents.put(INDEX, document(TITLE, index(pages)));
        for (Page page : pages) {
            documents.put(page.name(), document(page.title(), "<nav><a href=\"index.html\">All pages</a></nav>\n"
                    + page.html() + next(page)));
        }
        return documents;
    }

    private static String index(List<Page> pages) {
        return "<h1>" + TITLE + "</h1>\n<p>Read the first page before you connect anything.</p>\n<ol class=\"index\">\n"
                + pages.stream().map(page -> "<li>" + link(page) + "<br>" + Markdown.escaped(page.summary()) + "</li>\n")
                        .collect(Collectors.joining())
                + "</ol>\n";
    }

    private static String next(Page page) {
        return Guide.after(page).flatMap(Guide::find)
                .map(after -> "<nav>Next: " + link(after) + "</nav>\n").orElse("");
    }

    private static String link(Page page) {
        return "<a href=\"" + page.name() + ".html\">" + Markdown.escaped(page.title()) + "</a>";
    }

    private static String document(String title, String body) {
        return """
                <!DOCTYPE html>
                <html lang="en">
                <head>
                <meta charset="utf-8">
                <meta name="viewport" content="width=device-width, initial-scale=1">
                <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
                %s
                <title>%s</title>
                <style>
                %s</style>
                </head>
                <body>
                %s</body>
                </html>
                """.formatted(MARK, Markdown.escaped(title), Resource.text("guide.css"), body);
    }

    /** All pages into a folder that holds nothing else of theirs' names; a failure is a matter of the set-up. */
    public static void writeOrRefuse(Path folder) {
        try {
            Optional<Path> foreign = foreign(folder);
            if (foreign.isPresent()) {
                throw new Refused(foreign.get() + " is there already, and is no page of the guide", "give another folder, or move it away");
            }
            write(folder);
        } catch (IOException e) {
            throw Refused.setup(folder + ": the pages could not be written: " + e, "give a folder that you may write to", e);
        }
    }
}
