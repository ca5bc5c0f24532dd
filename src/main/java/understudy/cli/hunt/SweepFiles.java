package understudy.cli.hunt;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.Surroundings;
import understudy.plot.LinePlot;
import understudy.plot.PlotFile;
import understudy.sweep.SweepStop;
import understudy.sweep.SweepTable;
import understudy.sweep.SweptCircuit;
import understudy.text.Json;

/** The files that a sweep writes: its rows while it goes on, and what came of it. */
final class SweepFiles {

    @Option(names = "--csv", paramLabel = "FILE", description = "Keeps the rows in this file (CSV) (default: among your own files).")
    private String csv;

    @Option(names = "--resume", description = "Goes on with the sweep in --csv FILE where it stood.")
    private boolean resume;

    @Option(names = "--json", paramLabel = "FILE", description = "Writes all that came of it into this file (JSON).")
    private String json;

    @Option(names = "--plot", paramLabel = "FILE", description = "Draws how far the display is off into this file (PNG or SVG by its ending).")
    private String plot;

    private Optional<Path> table = Optional.empty();
    private Optional<Path> result = Optional.empty();
    private Optional<Path> picture = Optional.empty();

    void read(Arguments given) {
        table = given.tableFile("--csv", csv);
        result = given.jsonFile("--json", json);
        picture = given.picture("--plot", plot, PlotFile.ENDINGS);
        if (resume && csv == null) {
            given.problem("--resume", "it is not known which sweep", "name its file with --csv");
        } else if (!resume && table.filter(Files::exists).isPresent()) {
            given.problem("--csv", csv + " is there already", "give another name, or go on with that sweep with --resume");
        }
    }

    /** Empty for a sweep that is new. */
    Optional<SweepTable> resumed(SweptCircuit swept, List<SweepStop> steps, Arguments given) {
        return resume ? table.map(file -> SweepTable.resume(file, swept, steps, given)) : Optional.empty();
    }

    /** A new one, on the disk when this returns. */
    SweepTable begin(SweptCircuit swept, Surroundings surroundings) {
        return SweepTable.begin(table.orElseGet(() -> SweepTable.free(surroundings.folders().data(), swept, surroundings.clock())), swept);
    }

    boolean draws() {
        return picture.isPresent();
    }

    /** What came of it, into the files that were asked for. */
    void write(Object came, Optional<LinePlot> drawn, TraceTalk talk) {
        if (picture.isPresent()) {
            drawn.ifPresentOrElse(what -> {
                PlotFile.writeOrRefuse(what, picture.get());
                talk.say("Drawn in " + picture.get() + ".");
            }, () -> talk.say("Too little was read to draw; " + picture.get() + " was not written."));
        }
        result.ifPresent(file -> {
            Json.writeOrRefuse(came, file);
            talk.say("Written to " + file + ".");
        });
    }
}
