package understudy.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import understudy.plot.LinePlot;
import understudy.plot.PlotFile;
import understudy.refusal.Refused;

/** Writes plots, with refusals in the form that commands throw. */
final class Pictures {

    /** That a plot can be written with. */
    static final List<String> ENDINGS = List.of(".png", ".svg");

    private Pictures() {}

    static void write(LinePlot plot, Path file) {
        try {
            PlotFile.write(plot, file);
        } catch (IOException e) {
            throw Refused.setup(file.toString(), "the picture could not be written: " + e.getMessage(), "", e);
        }
    }
}
