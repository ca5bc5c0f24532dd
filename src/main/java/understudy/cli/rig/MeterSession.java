package understudy.cli.rig;

import java.util.Optional;
import understudy.audio.Player;
import understudy.audio.PlayerStatus;
import understudy.calibrate.MeterFindings;
import understudy.calibrate.SteadyTone;
import understudy.cli.rig.CalibrateCommand.Result;
import understudy.cli.rig.CalibrateCommand.Setup;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.Person;
import understudy.cli.terminal.Surroundings;
import understudy.quantity.NumberText;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.refusal.Refused;
import understudy.rig.AudioOutput;
import understudy.view.MeterText;

/** Plays a tone, and asks what the meter shows. */
final class MeterSession {

    private static final Range READING = new Range(0, 60, Unit.VOLT);

    private final Surroundings surroundings;
    private final Setup setup;
    private final MeterOptions.Asked asked;
    private final AudioOutput before;
    private final Person person;

    /** @param before what the output was taken for until now */
    MeterSession(Surroundings surroundings, Setup setup, MeterOptions.Asked asked, AudioOutput before) {
        this.surroundings = surroundings;
        this.setup = setup;
        this.asked = asked;
        this.before = before;
        this.person = new Person(surroundings, setup.talk(), "no calibration was kept");
    }

    Result run() {
        person.await("Connect the meter to this output, set to volts AC, and nothing else: no box, no clip, no vehicle. Set the"
                + " system's volume to 100 % and switch its sound effects off.", setup.yes());
        try (Player player = SteadyTone.open(setup.output(), setup.channel(), asked.frequencyHz(), setup.level())) {
            player.start();
            setup.talk().println("A tone of " + NumberText.of(asked.frequencyHz(), Unit.HERTZ) + " plays at "
                    + NumberText.of(100 * setup.level(), Unit.PERCENT) + " of full scale.");
            double open = reading("What does the meter show, like 0.512 V?", player);
            Optional<MeterFindings.Loaded> loaded = asked.load().map(load -> new MeterFindings.Loaded(load,
                    reading("Now with " + NumberText.of(load.nominal(), Unit.OHM) + " across the output, same range?", player)));
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

    private double reading(String question, Player player) {
        double volts = person.ask(new Question<>(question, "Everything that plays through this output is computed from it.",
                new Answers.Number(READING, "what the meter shows, volts AC"), Optional.empty()), "reading");
        if (player.status().state() == PlayerStatus.State.ENDED) {
            throw Refused.setup("the output was lost while the meter was read", "check the plug, then start again");
        }
        return volts;
    }

    private Result result(double openVolts, Optional<MeterFindings.Loaded> loaded, MeterFindings found) {
        MeterText text = new MeterText(setup.tested(), asked.frequencyHz(), openVolts, loaded, found, CommandWords.wording());
        return new Result(text.lines(), text.json(surroundings.clock().instant()), Optional.empty(), text.values(),
                new AudioOutput(found.fullScaleVolts(), found.outputOhms().orElse(before.outputOhms()),
                        before.couplingFarads(), before.inverted(), before.popVolts()));
    }
}
