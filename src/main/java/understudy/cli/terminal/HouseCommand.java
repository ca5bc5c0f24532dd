package understudy.cli.terminal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;
import understudy.plot.LinePlot;
import understudy.plot.TerminalPlot;
import understudy.text.Paragraph;

/** What every command has: its surroundings, and help. */
public abstract class HouseCommand implements Callable<Integer> {

    private static final int DRAWN_ROWS = 4;

    protected final Surroundings surroundings;

    @Mixin
    private HelpOption help;

    protected HouseCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    /** Lines, and in which file a drawing is, if it went into one. */
    protected static List<String> drawnIn(List<String> lines, Optional<Path> file) {
        List<String> all = new ArrayList<>(lines);
        file.ifPresent(picture -> all.add("drawn in " + picture));
        return all;
    }

    /** Lines, and below them a drawing, or where it is. */
    protected final List<String> withDrawing(List<String> lines, Optional<LinePlot> plot, Optional<Path> file) {
        List<String> all = new ArrayList<>(lines);
        all.add("");
        if (file.isEmpty()) {
            plot.ifPresent(drawing -> all.addAll(TerminalPlot.draw(drawing, Paragraph.width(), DRAWN_ROWS, surroundings.braille())));
        }
        return drawnIn(all, file);
    }
}
