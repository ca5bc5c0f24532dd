package understudy.cli.rig;

import java.util.Optional;
import picocli.CommandLine.Option;
import understudy.cli.terminal.Arguments;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.rig.AudioOutput;
import understudy.rig.Spread;

/** The options that describe an audio output in numbers. */
final class OutputOptions {

    private static final Range SWING = new Range(0.05, 60, Unit.VOLT);
    private static final Range OHMS = new Range(0.1, 10_000, Unit.OHM);
    private static final Range FARADS = new Range(1e-9, 1, Unit.FARAD);
    private static final Range POP = new Range(0, 60, Unit.VOLT);

    @Option(
            names = "--full-scale",
            paramLabel = "VOLTS",
            description = "Peak volts of a full-scale sample with nothing connected, like \"1.38 V 2%%\" (default: 1.41 V 20%%).")
    private String fullScale;

    @Option(names = "--output-ohms", paramLabel = "OHMS", description = "Resistance of the audio output (default: 100 ohm 50%%).")
    private String ohms;

    @Option(
            names = "--output-capacitor",
            paramLabel = "FARADS",
            description = "What blocks direct voltage in the output, or none (default: 10 uF 20%%).")
    private String farads;

    @Option(names = "--inverted", arity = "0..1", fallbackValue = "yes", paramLabel = "yes|no",
            description = "The output turns the signal upside down.")
    private String inverted;

    @Option(names = "--pop", paramLabel = "VOLTS", description = "The output's own step when the device is powered (default: 2.5 V).")
    private String pop;

    /** Anything at all. */
    boolean given() {
        return fullScale != null || ohms != null || farads != null || inverted != null || pop != null;
    }

    /** As given, the rest as in {@code otherwise}. */
    AudioOutput read(AudioOutput otherwise, Arguments given) {
        Spread volts = given.part("--full-scale", fullScale, SWING, otherwise.fullScaleVolts().tolerance())
                .orElse(otherwise.fullScaleVolts());
        Spread outputOhms = given.part("--output-ohms", ohms, OHMS, otherwise.outputOhms().tolerance())
                .orElse(otherwise.outputOhms());
        Optional<Spread> capacitor = farads == null ? otherwise.couplingFarads()
                : farads.strip().equals("none") ? Optional.empty()
                : given.part("--output-capacitor", farads, FARADS, 0.2);
        boolean upsideDown = inverted == null ? otherwise.inverted() : inverted.equals("yes");
        if (inverted != null && !inverted.equals("yes") && !inverted.equals("no")) {
            given.problem("--inverted", "\"" + inverted + "\" will not do", "give yes or no");
        }
        double step = given.quantity("--pop", pop, POP, otherwise.popVolts());
        return given.attempt("--full-scale", () -> new AudioOutput(volts, outputOhms, capacitor, upsideDown, step))
                .orElse(otherwise);
    }
}
