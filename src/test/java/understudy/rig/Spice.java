package understudy.rig;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assertions;

/**
 * The same circuits told to ngspice, a simulator that shares nothing with the code under test: the net list is written
 * from the records alone, the transformer is two coupled inductors, clamps are ramp sources, time is integrated.
 */
final class Spice {
    private final Path folder;
    private final StringBuilder list = new StringBuilder("* a rig on an input\n");

    Spice(Path folder) {
        this.folder = folder;
    }

    void line(String format, Object... values) {
        list.append(String.format(Locale.ROOT, format, values)).append('\n');
    }

    /** @param leg how the element between the rig and a pin is written, given its two nodes */
    void circuit(Rig rig, Input input, boolean withLead, String source, Leg leg) {
        boolean differential = input.differential();
        line("Vs src 0 %s", source);
        line("Ro src out %.12g", rig.output().outputOhms().nominal());
        if (rig.output().couplingFarads().isPresent()) {
            line("Cc out jack %.12g", rig.output().couplingFarads().get().nominal());
        } else {
            line("Vcc out jack 0");
        }
        Divider divider = rig.divider();
        line("Rs jack a %.12g", divider.seriesOhms().nominal());
        String bottom = differential ? "bottom" : "0";
        if (differential && !(divider.coupling() instanceof Coupling.Transformer)) {
            line("Rret 0 r %.12g", divider.seriesOhms().nominal());
        }
        if (divider.coupling() instanceof Coupling.Capacitor capacitor) {
            line("C1 a top %.12g", capacitor.farads().nominal());
            if (differential) {
                line("C2 r bottom %.12g", capacitor.farads().nominal());
            }
        } else if (divider.coupling() instanceof Coupling.Transformer t) {
            line("Rp a core %.12g", t.primaryOhms().nominal());
            line("L1 core 0 %.12g", t.henries().nominal());
            line("L2 sec %s %.12g", bottom, t.henries().nominal() * t.ratio().nominal() * t.ratio().nominal());
            line("K1 L1 L2 1");
            line("R2 sec top %.12g", t.secondaryOhms().nominal());
        } else {
            line("Vdirect a top 0");
            if (differential) {
                line("Vreturn r bottom 0");
            }
        }
        divider.shuntOhms().ifPresent(shunt -> line("Rsh top %s %.12g", bottom, shunt.nominal()));
        if (withLead) {
            line("Cl top %s %.12g", bottom, rig.lead().farads());
        }
        double ohms = rig.lead().ohms().nominal();
        line("%s", leg.write("1", "top", "p1", differential ? ohms : 2 * ohms));
        if (differential) {
            line("%s", leg.write("2", bottom, "p2", ohms));
        } else {
            line("Vp2 p2 0 0");
        }
        if (input instanceof ReluctorInput reluctor) {
            line("Rin p1 p2 %.12g", reluctor.inputOhms().nominal());
        } else if (input instanceof PulledUpInput pulledUp) {
            line("Vsup sup 0 %.12g", pulledUp.supplyVolts().nominal());
            line("Rpu sup p1 %.12g", pulledUp.pullUpOhms().nominal());
        } else if (input instanceof ResistiveInput resistive) {
            line("Rin p1 0 %.12g", resistive.inputOhms().nominal());
        }
        side(input, "1");
        if (differential) {
            side(input, "2");
        } else {
            line("Vs2 s2 0 0");
        }
    }

    interface Leg {
        String write(String name, String from, String to, double ohms);
    }

    static String wire(String name, String from, String to, double ohms) {
        return String.format(Locale.ROOT, "Rleg%s %s %s %.12g", name, from, to, ohms);
    }

    private void side(Input input, String name) {
        FrontEnd frontEnd = input.frontEnd();
        line("Rf%s p%s s%s %.12g", name, name, name, frontEnd.seriesOhms().nominal());
        if (input instanceof ReluctorInput reluctor) {
            line("Vb%s b%s 0 %.12g", name, name, reluctor.biasVolts().nominal());
            line("Rb%s b%s s%s %.12g", name, name, name, reluctor.biasOhms().nominal());
        }
        frontEnd.filterFarads().ifPresent(c -> line("Cf%s s%s 0 %.12g", name, name, c.nominal()));
        frontEnd.clamp().ifPresent(clamp -> {
            line("Bh%s s%s 0 I=uramp(V(s%s)-(%.12g))/%.12g", name, name, name, clamp.highVolts(), clamp.onOhms());
            line("Bl%s 0 s%s I=uramp((%.12g)-V(s%s))/%.12g", name, name, clamp.lowVolts(), name, clamp.onOhms());
        });
    }

    /** Runs each analysis; each answers with its rows: scale, then what was asked for. */
    List<List<double[]>> run(String tolerances, List<String> analyses, String... vectors)
            throws IOException, InterruptedException {
        // rshunt gives a direct path to nodes between two capacitors; 1e12 ohm is nothing beside the rest
        line(".options %s rshunt=1e12", tolerances);
        line(".control\nset numdgt=12\nset wr_singlescale");
        for (int i = 0; i < analyses.size(); i++) {
            line("%s", analyses.get(i));
            line("wrdata %s %s", folder.resolve("answer" + i + ".data"), String.join(" ", vectors));
        }
        line("quit\n.endc\n.end");
        Path file = folder.resolve("circuit.cir");
        Path log = folder.resolve("log");
        Files.writeString(file, list);
        Process process;
        try {
            process = new ProcessBuilder("ngspice", "-b", file.toString())
                    .redirectErrorStream(true).redirectOutput(log.toFile()).start();
        } catch (IOException e) {
            return Assertions.fail("ngspice is not installed: run the tests through scripts/test, which installs it", e);
        }
        if (!process.waitFor(60, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            Assertions.fail("ngspice does not end; its circuit:\n" + list);
        }
        List<List<double[]>> answers = new ArrayList<>();
        for (int i = 0; i < analyses.size(); i++) {
            Path answer = folder.resolve("answer" + i + ".data");
            if (!Files.exists(answer)) {
                Assertions.fail(Files.readString(log) + "\n" + list);
            }
            List<double[]> rows = new ArrayList<>();
            for (String row : Files.readAllLines(answer)) {
                String[] words = row.strip().split("\\s+");
                double[] numbers = new double[words.length];
                for (int w = 0; w < words.length; w++) {
                    numbers[w] = Double.parseDouble(words[w]);
                }
                rows.add(numbers);
            }
            Files.delete(answer);
            answers.add(rows);
        }
        return answers;
    }

    /** Between the rows, in a straight line; rows at a jump come twice, the later counts. */
    static double at(List<double[]> rows, double seconds, int column) {
        int low = 0;
        int high = rows.size() - 1;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (rows.get(middle)[0] <= seconds) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double[] from = rows.get(low);
        double[] to = rows.get(high);
        return from[column] + (to[column] - from[column]) * (seconds - from[0]) / (to[0] - from[0]);
    }
}
