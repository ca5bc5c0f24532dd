package understudy.cli;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Predicate;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HelpOption;
import understudy.cli.terminal.Surroundings;
import understudy.guide.Browser;
import understudy.guide.Guide;
import understudy.guide.GuideHtml;
import understudy.guide.Page;
import understudy.refusal.Refused;
import understudy.text.Table;
import understudy.view.PageText;

/** Shows the guide. */
@Command(
        name = "guide",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Shows how to build the box, wire it and use it, page by page.",
        footer = {
            "",
            "Examples:",
            "  understudy guide",
            "  understudy guide wiring",
            "  understudy guide wiring --browser",
            "  understudy guide --html understudy-guide"
        })
final class GuideCommand implements Callable<Integer> {

    private final Surroundings surroundings;
    private final Predicate<Path> browser;

    @Mixin
    private HelpOption help;

    @Parameters(paramLabel = "PAGE", arity = "0..1", description = "A page by its name. Without one: the list of pages.")
    private String pageName;

    @Option(names = "--browser", description = "Shows it in the web browser, with its drawings; nothing is fetched.")
    private boolean inBrowser;

    @Option(names = "--html", paramLabel = "FOLDER", description = "Writes all pages into this folder, to print or to take along.")
    private String htmlFolder;

    public GuideCommand(Surroundings surroundings) {
        this(surroundings, Browser::show);
    }

    /** @param browser shows a file; false when there is none that could */
    public GuideCommand(Surroundings surroundings, Predicate<Path> browser) {
        this.surroundings = surroundings;
        this.browser = browser;
    }

    @Override
    public Integer call() {
        Optional<Page> page = Optional.ofNullable(pageName).map(Guide::page);
        if (htmlFolder != null) {
            if (pageName != null || inBrowser) {
                throw new Refused("--html: it writes all pages, and shows none", "give it alone");
            }
            Path folder = folder(htmlFolder);
            GuideHtml.writeOrRefuse(folder);
            surroundings.out().println(Guide.names().size() + " pages written; begin with " + GuideHtml.file(folder, GuideHtml.INDEX));
        } else if (inBrowser) {
            Path folder = surroundings.folders().state().resolve("guide");
            GuideHtml.writeOrRefuse(folder);
            Path file = GuideHtml.file(folder, page.map(Page::name).orElse(GuideHtml.INDEX)).toAbsolutePath();
            surroundings.out().println(browser.test(file)
                    ? "shown in the browser: " + file
                    : "no browser could be started; open this file in one: " + file);
        } else if (page.isPresent()) {
            show(page.get());
        } else {
            list();
        }
        return ExitCode.FINE;
    }

    private void list() {
        Table table = new Table();
        Guide.pages().forEach(page -> table.row(page.name(), page.summary()));
        table.lines().forEach(surroundings.out()::println);
        surroundings.out().println();
        surroundings.out().println(CommandWords.command("guide " + Guide.names().get(0)) + " is the first; read it before you connect anything.");
    }

    private void show(Page page) {
        PageText.lines(page, surroundings.colour()).forEach(surroundings.out()::println);
        Guide.after(page).ifPresent(next -> {
            surroundings.out().println();
            surroundings.out().println("Next: " + CommandWords.command("guide " + next));
        });
    }

    private static Path folder(String name) {
        try {
            Path folder = Path.of(name);
            if (!Files.exists(folder) || Files.isDirectory(folder)) {
                return folder;
            }
            throw new Refused("--html: " + folder + " is a file", "give the name of a folder");
        } catch (InvalidPathException e) {
            throw new Refused("--html: \"" + name + "\" is no name for a folder", "give another one");
        }
    }
}
