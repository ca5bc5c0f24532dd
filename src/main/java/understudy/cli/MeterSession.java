package understudy.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import understudy.audio.Player;
import understudy.audio.PlayerStatus;
import understudy.calibrate.MeterFindings;
import understudy.calibrate.SteadyTone;
import understudy.cli.CalibrateCommand.Result;
import understudy.cli.CalibrateCommand.Setup;
import understudy.quantity.NumberText;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Refused;
import understudy.rig.Amounts;
import understudy.rig.AudioOutput;
import understudy.rig.Spread;
import understudy.text.Json;
import understudy.text.Paragraph;
import understudy.text.Table;
import understudy.view.MeasuredJson;

/** Plays a tone, and asks what the meter shows. */
final class MeterSession {

    private static final Range READING = new Range(0, 60, Unit.VOLT);

    private final Surroundings surroundings;
    private final Setup setup;
    private final MeterOptions.Asked asked;
    private final AudioOutput before;
    private final Confirmation person;

    /** @param before what the output was taken for until now */
    MeterSession(Surroundings surroundings, Setup setup, MeterOptions.Asked asked, AudioOutput before) {
        this.surroundings = surroundings;
        this.setup = setup;
        this.asked = asked;
        this.before = before;
        this.person = new Confirmation(surroundings, setup.talk());
    }

    Result run() {
        person.await("Connect the meter to this output, set to volts AC, and nothing else: no box, no clip, no vehicle. Set the"
                + " system's volume to 100 % and switch its sound effects off.", setup.yes());
        try (Player player = SteadyTone.open(setup.output(), setup.channel(), asked.frequencyHz(), setup.level())) {
            player.start();
            setup.talk().println("A tone of " + NumberText.of(asked.frequencyHz(), Unit.HERTZ) + " plays at "
                    + NumberText.of(100 * setup.level(), Unit.PERCENT) + " of full scale.");
            double open = reading("What does the meter show, like 0.512 V? ", player);
            Optional<MeterFindings.Loaded> loaded = asked.load().map(load -> new MeterFindings.Loaded(load,
                    reading("Now with " + NumberText.of(load.nominal(), Unit.OHM) + " across the output, same range? ", player)));
            return result(open, loaded, findings(open, loaded));
        }
    }

    private MeterFindings findings(double openVolts, Optional<MeterFindings.Loaded> loaded) {
        try {
            return MeterFindings.of(asked.meter(), setup.level(), openVolts, loaded);
        } catch (Refused e) {
            throw e.inSetup("no calibration was kept");
        }
    }

    /** A number alone is taken for volts. Somebody at a terminal is asked again, a script is not. */
    private double reading(String question, Player player) {
        while (true) {
            String line = person.answer(question);
            if (player.status().state() == PlayerStatus.State.ENDED) {
                throw Refused.setup("the output was lost while the meter was read", "check the plug, then start again");
            }
            try {
                return READING.parse(line.matches("[0-9.]+") ? line + " V" : line);
            } catch (Refused e) {
                String problem = "reading: " + e.wrong() + "; " + e.right();
                if (!surroundings.terminal()) {
                    throw new Refused(problem, "");
                }
                setup.talk().println(problem);
            }
        }
    }

    private Result result(double openVolts, Optional<MeterFindings.Loaded> loaded, MeterFindings found) {
        Spread full = found.fullScaleVolts();
        Table table = new Table().row("Found", "", "within")
                .row("full scale", Amounts.peakAndRms(full), Amounts.tolerance(full));
        found.outputOhms().ifPresent(ohms -> table.row("output resistance", found.leastToTell()
                ? "at most " + NumberText.of(ohms.nominal() * (1 + ohms.tolerance()), Unit.OHM, 3)
                : NumberText.of(ohms.nominal(), Unit.OHM, 3), found.leastToTell() ? "-" : Amounts.tolerance(ohms)));
        List<String> lines = new ArrayList<>(List.of(""));
        lines.addAll(table.lines());
        lines.add("");
        if (found.leastToTell()) {
            lines.addAll(Paragraph.lines("The output resistance is too low for this load to tell; a load of fewer ohms tells"
                    + " more, 32 ohm and more do no harm."));
        } else if (found.outputOhms().isEmpty()) {
            lines.addAll(Paragraph.lines("With --load, a second reading tells the output resistance too."));
        }
        lines.addAll(Paragraph.lines("Polarity and response: 'understudy calibrate --loopback' tells them."));
        return new Result(lines, json(openVolts, loaded, found), Optional.empty(), values(openVolts, found),
                new AudioOutput(found.fullScaleVolts(), found.outputOhms().orElse(before.outputOhms()),
                        before.couplingFarads(), before.inverted(), before.popVolts()));
    }

    private static Map<String, Double> values(double openVolts, MeterFindings found) {
        Map<String, Double> values = new TreeMap<>(Map.of("openVoltsRms", openVolts,
                "fullScaleVolts", found.fullScaleVolts().nominal()));
        found.outputOhms().ifPresent(ohms -> values.put("outputOhms", ohms.nominal()));
        return values;
    }

    private Map<String, Object> json(double openVolts, Optional<MeterFindings.Loaded> loaded, MeterFindings found) {
        return Json.map(
                "method", "meter",
                "at", surroundings.clock().instant().toString(),
                "device", setup.output().device().label(),
                "channel", setup.channel() + 1,
                "rateHz", setup.output().rateHz(),
                "level", Json.number(setup.level()),
                "frequencyHz", asked.frequencyHz(),
                "openVoltsRms", Json.number(openVolts),
                "loadOhms", loaded.map(load -> Json.number(load.ohms().nominal())).orElse(null),
                "loadedVoltsRms", loaded.map(load -> Json.number(load.volts())).orElse(null),
                "fullScaleVolts", MeasuredJson.spread(found.fullScaleVolts()),
                "outputOhms", found.outputOhms().map(MeasuredJson::spread).orElse(null));
    }
}
