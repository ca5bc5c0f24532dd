package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import understudy.cli.terminal.ExitCode;
import understudy.guide.Guide;
import understudy.guide.Page;
import understudy.text.Paragraph;

class GuideCommandTest {

    @TempDir
    private Path home;

    static List<String> names() {
        return Guide.names();
    }

    @Test
    void listsEveryPageWithItsSummary() {
        Run.Outcome list = Run.in(home).understudy("guide");
        assertThat(list.exitCode()).isZero();
        assertThat(list.out()).startsWith("before     What can hurt you, others and the module, and what to do about it.\n");
        String unwrapped = list.out().replaceAll("\\s+", " ");
        assertThat(Guide.pages()).allSatisfy(page -> assertThat(unwrapped).contains(page.name() + " " + page.summary()));
        assertThat(list.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(Paragraph.width()));
    }

    @ParameterizedTest
    @MethodSource("names")
    void aPageFitsTheScreenAndNamesTheNextOne(String name) {
        Run.Outcome shown = Run.in(home).understudy("guide", name);
        Page page = Guide.find(name).orElseThrow();
        assertThat(shown.exitCode()).isZero();
        assertThat(shown.out()).startsWith(page.title() + "\n" + "=".repeat(page.title().length()) + "\n\n");
        Guide.after(page).ifPresent(next -> assertThat(shown.out()).endsWith("\nNext: 'understudy guide " + next + "'\n"));
        // a command must stay in one piece, so that it can be copied
        assertThat(shown.out().lines().filter(line -> !line.startsWith("    understudy ")))
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(Paragraph.width()));
        assertThat(shown.out()).as("no marks of the source are left").doesNotContain("**", "](", "{{", "`");
    }

    @Test
    void tablesListsWarningsAndDrawingsKeepTheirShape() {
        assertThat(Run.in(home).understudy("guide", "audio").out())
                .contains("""
                          what                      number                     known from
                          full scale                0.5 to 1.2 V rms usual,    usual in the trade, not
                                                    0.3 least, 3 most          checked
                          a line output             1.0 V rms; 0.7 V rms on a  a published requirement
                        """)
                .contains("""
                          1. Plug it in. See whether it is there, and what it really opens with:

                            understudy devices

                          2. Set its volume in the system to 100 %, and the balance to the middle. The
                             program does the rest; a volume below 100 % throws away volts, and a
                        """);
        assertThat(Run.in(home).understudy("guide", "box").out())
                .contains("""
                            tip    o---[R1 series]---[C1 optional]---+---o  signal clip, on LAST
                                                                     |
                                                                 [R2 shunt]
                        """)
                .contains("""
                          ! A capacitor never replaces a resistor. It blocks a steady current only: at
                          ! the first touch it lets everything through. And alone it looks to the module
                          ! like a sensor with a broken wire.
                        """);
    }

    @Test
    void boldIsForPeopleWhoWantIt() {
        assertThat(Run.in(home).atTerminal("").withEnv(Map.of("TERM", "xterm")).understudy("guide", "box").out())
                .startsWith("\033[1mThe box, from four parts\033[0m\n");
        assertThat(Run.in(home).atTerminal("").understudy("guide", "box").out()).doesNotContain("\033");
    }

    @Test
    void anUnknownPageIsAnsweredWithTheNearestOrAll() {
        Run.Outcome mistyped = Run.in(home).understudy("guide", "wirng");
        assertThat(mistyped.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(mistyped.err()).isEqualTo("there is no page \"wirng\" in the guide; did you mean wiring?\n");
        assertThat(Run.in(home).understudy("guide", "somewhere").err()).isEqualTo(
                "there is no page \"somewhere\" in the guide; the pages are " + String.join(", ", Guide.names()) + "\n");
    }

    @Test
    void writesAllPagesAndReplacesItsOwn() throws IOException {
        Path folder = home.resolve("some/handouts");
        for (int time = 0; time < 2; time++) {
            Run.Outcome written = Run.in(home).understudy("guide", "--html", folder.toString());
            assertThat(written.err()).isEmpty();
            assertThat(written.out()).isEqualTo(
                    Guide.names().size() + " pages written; begin with " + folder.resolve("index.html") + "\n");
        }
        List<String> expected = new ArrayList<>(Guide.names());
        expected.add("index");
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrderElementsOf(expected.stream().map(name -> name + ".html").toList());
        }
    }

    @Test
    void neverReplacesAFileOfSomebodyElse() throws IOException {
        Path theirs = home.resolve("wiring.html");
        Files.writeString(theirs, "my own notes");
        Run.Outcome refused = Run.in(home).understudy("guide", "--html", home.toString());
        assertThat(refused.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(refused.err()).isEqualTo(
                theirs + " is there already, and is no page of the guide; give another folder, or move it away\n");
        assertThat(theirs).hasContent("my own notes");
        assertThat(home.resolve("index.html")).doesNotExist();
    }

    @Test
    void saysWhatIsWrongWithTheFolder() throws IOException {
        Path file = Files.createFile(home.resolve("file"));
        assertThat(Run.in(home).understudy("guide", "--html", file.toString()).err())
                .isEqualTo("--html: " + file + " is a file; give the name of a folder\n");
        Run.Outcome below = Run.in(home).understudy("guide", "--html", file.resolve("below").toString());
        assertThat(below.exitCode()).isEqualTo(ExitCode.FAILED);
        assertThat(below.err()).contains("the pages could not be written").endsWith("give a folder that you may write to\n");
        assertThat(Run.in(home).understudy("guide", "box", "--html", home.resolve("x").toString()).err())
                .isEqualTo("--html: it writes all pages, and shows none; give it alone\n");
        assertThat(home.resolve("x")).doesNotExist();
    }

    @Test
    void showsAPageInTheBrowserOrSaysWhereItIs() {
        List<Path> shown = new ArrayList<>();
        String page = home.resolve(".local/state/understudy/guide/box.html").toString();
        assertThat(inBrowser(shown, true, "box", "--browser")).isEqualTo("shown in the browser: " + page + "\n");
        assertThat(inBrowser(shown, false, "--browser")).isEqualTo("no browser could be started; open this file in one: "
                + page.replace("box.html", "index.html") + "\n");
        assertThat(shown).hasSize(2).allSatisfy(file -> assertThat(file).isNotEmptyFile());
    }

    private String inBrowser(List<Path> shown, boolean works, String... args) {
        StringWriter out = new StringWriter();
        PrintWriter writer = new PrintWriter(out, true);
        new CommandLine(new GuideCommand(Run.in(home).surroundings(writer, writer), file -> {
            shown.add(file);
            return works;
        })).execute(args);
        return out.toString();
    }
}
