package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import understudy.cli.terminal.ExitCode;

/** What a sweep keeps, and when. */
class SweepLogTest extends SweepBench {

    @Test
    void aSweepGoesOnWhereItStood() throws IOException {
        fine("20\n\n", sweep("--speeds", "600, 1200, 1800 rpm", "--csv", file("log.csv")));
        String out = fine("60\n", sweep("--speeds", "600, 1200, 1800 rpm", "--csv", file("log.csv"), "--resume"));
        assertThat(out).containsOnlyOnce("Step 3 of 3").doesNotContain("Step 2 of 3").contains("1     600 rpm");
        assertThat(Files.readAllLines(home.resolve("log.csv"))).hasSize(4);
    }

    @Test
    void aSweepGoesOnOnlyAsItBegan() throws IOException {
        fine("20\n40\n", sweep("--speeds", "600, 1200, 1800 rpm", "--csv", file("log.csv")));
        String before = Files.readString(home.resolve("log.csv"));
        Run.Outcome others = Run.in(home).understudy(sweep("--speeds", "600, 1300 rpm", "--csv", file("log.csv"), "--resume"));
        assertThat(others.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(others.err()).isEqualTo(file("log.csv") + ":3: this row does not belong to the speeds, or the reading, of this sweep;"
                + " give the same as when it was begun\n");
        Run.Outcome overwritten = Run.in(home).understudy(sweep("--speeds", "600, 1200 rpm", "--csv", file("log.csv")));
        assertThat(overwritten.err()).isEqualTo("--csv: " + file("log.csv") + " is there already; give another name, or go on with that"
                + " sweep with --resume\n");
        Files.writeString(home.resolve("other.csv"), "a,b\n1,2\n");
        assertThat(Run.in(home).understudy(sweep("--speeds", "600, 1200 rpm", "--csv", file("other.csv"), "--resume")).err())
                .startsWith("--resume: " + file("other.csv") + " holds no sweep of this circuit and display; ");
        Run.Outcome missing = Run.in(home).understudy(sweep("--speeds", "600, 1200 rpm", "--csv", file("none.csv"), "--resume"));
        assertThat(missing.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(missing.err()).contains("none.csv");
        assertThat(Files.readString(home.resolve("log.csv"))).isEqualTo(before);
    }

    @Test
    void theRowsAreKeptWithoutBeingAskedFor() throws IOException {
        fine("20\n", sweep("--speeds", "600, 1200 rpm"));
        fine("20\n", sweep("--speeds", "600, 1200 rpm"));
        fine("stop\n", sweep("--speeds", "600, 1200 rpm"));
        assertThat(ownFiles()).containsExactly("wheel-20260301-120000-2.csv", "wheel-20260301-120000.csv");
    }

    @Test
    void everyRowIsOnTheDiskBeforeTheNextSpeedIsAskedFor() {
        List<Long> rows = new ArrayList<>();
        Runnable look = () -> {
            try {
                rows.add((long) Files.readAllLines(home.resolve("log.csv")).size() - 1);
            } catch (IOException e) {
                rows.add(-1L);
            }
        };
        looking(List.of("20", "40", "back", "41", ""), new Runnable[] {look, look, look, look, look},
                sweep("--speeds", "600, 1200, 1800 rpm", "--csv", file("log.csv")));
        assertThat(rows).containsExactly(0L, 1L, 2L, 1L, 2L);
        look.run();
        assertThat(rows).endsWith(3L);
    }

    @Test
    void whatCannotBeWrittenIsTriedAgainAndNothingIsLost() throws IOException {
        Path folder = Files.createDirectory(home.resolve("gone"));
        Path aside = home.resolve("aside");
        Runnable nothing = () -> {};
        String out = looking(List.of("20", "40", "", "60"),
                new Runnable[] {nothing, () -> move(folder, aside), () -> move(aside, folder), nothing},
                sweep("--speeds", "600, 1200, 1800 rpm", "--csv", folder.resolve("log.csv").toString()));
        assertThat(words(out)).contains("log.csv can't be written: its folder is not there. What was typed before is kept.");
        assertThat(Files.readAllLines(folder.resolve("log.csv")).stream().map(line -> line.replaceAll(".*,", "")))
                .containsExactly("verdict", "right", "right", "right");
    }

    private static void move(Path from, Path to) {
        try {
            Files.move(from, to);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }
}
