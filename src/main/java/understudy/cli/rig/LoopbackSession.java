package understudy.cli.rig;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import understudy.audio.Device;
import understudy.calibrate.Interference;
import understudy.calibrate.LoopbackCheck;
import understudy.calibrate.LoopbackFindings;
import understudy.calibrate.LoopbackRun;
import understudy.calibrate.TestProgram;
import understudy.cli.rig.CalibrateCommand.Result;
import understudy.cli.rig.CalibrateCommand.Setup;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.Person;
import understudy.cli.terminal.Progress;
import understudy.cli.terminal.Surroundings;
import understudy.measure.InputFault;
import understudy.plot.PlotFile;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refused;
import understudy.rig.AudioOutput;
import understudy.rig.Spread;
import understudy.view.LoopbackText;

/** Plays through a patch cable, records what comes back, and tells what became of it. */
final class LoopbackSession {

    private final Surroundings surroundings;
    private final Setup setup;
    private final Device input;
    private final int inputChannel;
    private final LoopbackOptions.Asked asked;
    private final AudioOutput before;

    /** @param before what the output was taken for until now; its own resistance is divided by the input's */
    LoopbackSession(Surroundings surroundings, Setup setup, LoopbackOptions.Asked asked, AudioOutput before) {
        this.surroundings = surroundings;
        this.setup = setup;
        this.input = asked.input().orElseThrow(() -> Refused.setup("this machine has no audio input for the patch cable", "plug one in, or use --meter"));
        this.inputChannel = asked.channel();
        this.asked = asked;
        this.before = before;
    }

    private LoopbackFindings findings(TestProgram program, LoopbackRun run) {
        try {
            return LoopbackFindings.of(program, run, inputChannel);
        } catch (Refused e) {
            throw e.inSetup("no calibration was kept");
        }
    }

    /** @param plot where to draw the response, or null */
    Result run(Path plot) throws InterruptedException {
        new Person(surroundings, setup.talk(), "no calibration was kept").await("Connect one patch cable from this output to the input \""
                + input.label() + "\", channel " + (inputChannel + 1) + ", and nothing else: no box, no clip, no vehicle. Set"
                + " the system's volume to 100 % and switch its sound effects off.", setup.yes());
        TestProgram program = new TestProgram(setup.output().rateHz(), setup.level());
        LoopbackRun run;
        try (Progress progress = new Progress(surroundings, "playing and recording")) {
            run = LoopbackRun.of(program, setup.output(), setup.channel(), input, inputChannel, progress::at);
        } catch (Refused e) {
            throw e.inSetup("no calibration was kept");
        }
        if (inputChannel >= run.channels().length) {
            throw new Refused("--input-channel: audio input \"" + input.label() + "\" has " + run.channels().length
                    + ", so there is no channel " + (inputChannel + 1), "give a number from 1 to " + run.channels().length);
        }
        List<InputFault> faults = LoopbackCheck.of(program, run, inputChannel);
        if (!faults.isEmpty()) {
            throw new Refused(faults.stream().map(fault -> new Refusal(Location.named("audio input \"" + input.label() + "\""),
                    fault.message(), "no calibration was kept")).toList());
        }
        LoopbackFindings found = findings(program, run);
        Optional<Spread> volts = asked.fullScaleVolts().map(scale -> found.fullScaleVolts(scale, before.outputOhms(), asked.ohms()));
        LoopbackText text = new LoopbackText(setup.tested(), input, inputChannel, found, volts, CommandWords.wording());
        if (plot != null) {
            PlotFile.writeOrRefuse(text.plot(), plot);
        }
        return new Result(text.lines(), text.json(surroundings.clock().instant()), failure(found.interference()), text.values(),
                found.output(before, volts, asked.ohms()));
    }

    private static Optional<String> failure(List<Interference> interference) {
        return interference.isEmpty() ? Optional.empty() : Optional.of(interference.stream()
                .map(one -> one.seen() + "; " + CommandWords.text(one.remedy())).collect(Collectors.joining("\n"))
                + "\nthe output is not proven, and no calibration was kept: put this right, then calibrate again");
    }
}
