package understudy.cli.signal;

import java.util.Optional;
import java.util.OptionalInt;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import understudy.bench.Hookup;
import understudy.bench.Outlet;
import understudy.cli.terminal.Arguments;

/** The options that say what one steady signal goes through and where, for commands that inject and ask for the display. */
public final class SteadyOptions {

    @Option(names = "--rig", paramLabel = "NAME", description = "The rig it goes through; volts are then volts at the pins.")
    private String rig;

    @Option(names = "--input", paramLabel = "KIND", description = "The module's input, where the circuit file does not say:"
            + " a kind that 'understudy input' lists.")
    private String input;

    @Option(names = "--fit", description = "Scales the signal to 90 %% of full scale.")
    private boolean fit;

    @Option(names = "--rate", paramLabel = "RATE", description = "Samples a second, like 48000 or \"96 kHz\" (default: 48000).")
    private String rate;

    @Mixin
    private DestinationOptions place;

    public Optional<String> rig() {
        return Optional.ofNullable(rig);
    }

    public Optional<String> input() {
        return Optional.ofNullable(input);
    }

    public boolean fit() {
        return fit;
    }

    public int rateHz(Arguments given) {
        return SignalOptions.rateHz(rate, given);
    }

    /** The rate, if one was asked for; a device otherwise has its own. */
    public OptionalInt askedRateHz(Arguments given) {
        return rate == null ? OptionalInt.empty() : OptionalInt.of(rateHz(given));
    }

    /** @param hookup whose volts hold for one device, if they do */
    public Outlet place(Optional<Hookup> hookup, Arguments given) {
        return place.read(hookup.flatMap(known -> known.rig().device()), given);
    }

    /** What has to be given again to go on as it was. */
    public String again() {
        return place.again() + (fit ? " --fit" : "") + (rate == null ? "" : " --rate \"" + rate + "\"");
    }
}
