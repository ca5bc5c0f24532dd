package understudy.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import understudy.audio.AudioException;
import understudy.audio.Device;
import understudy.calibrate.Interference;
import understudy.calibrate.LoopbackCheck;
import understudy.calibrate.LoopbackFindings;
import understudy.calibrate.LoopbackRun;
import understudy.calibrate.TestProgram;
import understudy.cli.CalibrateCommand.Result;
import understudy.cli.CalibrateCommand.Setup;
import understudy.measure.InputFault;

/** Plays through a patch cable, records what comes back, and tells what became of it. */
final class LoopbackSession {

    private final Surroundings surroundings;
    private final Setup setup;
    private final Device input;
    private final int inputChannel;

    /** @param inputChannel from 0 */
    LoopbackSession(Surroundings surroundings, Setup setup, Device input, int inputChannel) {
        this.surroundings = surroundings;
        this.setup = setup;
        this.input = input;
        this.inputChannel = inputChannel;
    }

    /** @param plot where to draw the response, or null */
    Result run(Path plot) throws AudioException, InterruptedException {
        new Confirmation(surroundings, setup.talk()).await("Connect one patch cable from this output to the input \""
                + input.label() + "\", channel " + (inputChannel + 1) + ", and nothing else: no box, no clip, no vehicle. Set"
                + " the system's volume to 100 % and switch its sound effects off.", setup.yes());
        TestProgram program = new TestProgram(setup.output().rateHz(), setup.level());
        LoopbackRun run;
        try (Progress progress = new Progress(surroundings, "playing and recording")) {
            run = LoopbackRun.of(program, setup.output(), setup.channel(), input, inputChannel, progress::at);
        }
        if (inputChannel >= run.channels().length) {
            throw new BadInput("--input-channel: audio input \"" + input.label() + "\" has " + run.channels().length
                    + ", so there is no channel " + (inputChannel + 1) + "; give a number from 1 to " + run.channels().length);
        }
        List<InputFault> faults = LoopbackCheck.of(program, run, inputChannel);
        if (!faults.isEmpty()) {
            throw new BadInput(faults.stream().map(fault -> "audio input \"" + input.label() + "\": " + fault.message()
                    + "; nothing was kept").toList());
        }
        LoopbackFindings found = LoopbackFindings.of(program, run, inputChannel);
        LoopbackText text = new LoopbackText(setup, input, inputChannel, found);
        if (plot != null) {
            Pictures.write(text.plot(), plot);
        }
        return new Result(text.lines(), text.json(surroundings.clock().instant()), failure(found.interference()));
    }

    private static Optional<String> failure(List<Interference> interference) {
        return interference.isEmpty() ? Optional.empty() : Optional.of(interference.stream()
                .map(Interference::message).collect(Collectors.joining("\n"))
                + "\nthe output is not proven, and nothing was kept: put this right, then calibrate again");
    }
}
