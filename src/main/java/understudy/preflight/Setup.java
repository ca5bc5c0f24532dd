package understudy.preflight;

import java.util.List;
import java.util.Optional;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.rig.Connection;
import understudy.rig.Coupling;
import understudy.rig.Input;
import understudy.rig.Probe;
import understudy.rig.Rig;
import understudy.rig.WorstCase;
import understudy.wave.MeanVolts;
import understudy.wave.OutputFacts;

/**
 * What is to be judged: one output of a pattern, played through a rig into an input at steady speeds. The faults that
 * the pattern declares on act. The known polarity of the audio output counts as made good by whoever plays.
 *
 * @param pattern   with this output alone; its profile is left aside
 * @param rateHz    frames a second
 * @param level     times the pattern's volts, above 0
 * @param mostLevel that the outputs which play beside this one leave room for; infinite when it plays alone
 * @param corrected the droop of what couples is undone while the headroom lasts
 * @param swapped   the two clips are swapped
 * @param built     what rig and input really are; whoever plays takes them for what they are called
 */
public record Setup(
        Pattern pattern,
        Rig rig,
        Input input,
        int rateHz,
        double level,
        double mostLevel,
        boolean corrected,
        boolean swapped,
        WorstCase.Build built) {
    /** Where pattern volts are told: well above what couples, well below what smooths. */
    public static final double MID_HZ = 1000;
    /** What the largest output may use of full scale: room for what a converter's filter overshoots. */
    public static final double FIT_PART = 0.9;

    public Setup {
        if (pattern.outputs().size() != 1 || rateHz <= 0 || !(level > 0)) {
            throw new IllegalArgumentException(pattern.outputs().size() + " outputs, " + rateHz + " Hz, level " + level);
        }
    }

    /** One output of a pattern as it is declared, its faults that are on included, with the droop undone. */
    public static Setup of(Pattern pattern, Output output, Rig rig, Input input, int rateHz) {
        Pattern alone = pattern.withProfile(Optional.empty()).withOutputs(List.of(output)).withFaults(
                pattern.faults().stream().filter(fault -> fault.place().on()
                        && fault.place().output().equals(output.name())).toList());
        return new Setup(alone, rig, input, rateHz, 1, Double.POSITIVE_INFINITY, true, false, new WorstCase.Build(rig, input));
    }

    public Output output() {
        return pattern.outputs().get(0);
    }

    /** The most, to either side of rest, that this rig can give between the pins of this input. */
    public double mostPinVolts() {
        return pinVoltsPerFullScale(connection());
    }

    /** The most that the output asks for at the pins, by its declared levels, to either side of rest. */
    public double askedPinVolts() {
        OutputFacts facts = OutputFacts.of(pattern).get(0);
        double mean = isCoupled() ? MeanVolts.of(output()) : 0; // what is blocked asks for nothing
        return level * Math.max(facts.highestVolts() - mean, mean - facts.lowestVolts());
    }

    /** Whether all that is asked for can be given. */
    public boolean fits() {
        return askedPinVolts() <= mostPinVolts();
    }

    /** Scaled, with all that plays beside it alike, so that the largest volts are 90 % of what the rigs can give. */
    public Setup fitted() {
        return withLevel(Math.min(mostLevel, level * FIT_PART * mostPinVolts() / askedPinVolts()));
    }

    /** Beside outputs that leave room for so much. */
    public Setup withMostLevel(double other) {
        return new Setup(pattern, rig, input, rateHz, level, other, corrected, swapped, built);
    }

    public Setup withLevel(double other) {
        return new Setup(pattern, rig, input, rateHz, other, mostLevel, corrected, swapped, built);
    }

    Setup withRate(int otherHz) {
        return new Setup(pattern, rig, input, otherHz, level, mostLevel, corrected, swapped, built);
    }

    Setup withRig(Rig other) {
        return new Setup(pattern, other, input, rateHz, level, mostLevel, corrected, swapped, new WorstCase.Build(other, input));
    }

    Setup withInput(Input other) {
        return new Setup(pattern, rig, other, rateHz, level, mostLevel, corrected, swapped, new WorstCase.Build(rig, other));
    }

    Setup withOutput(Output other) {
        return new Setup(pattern.withOutputs(List.of(other)), rig, input, rateHz, level, mostLevel, corrected, swapped, built);
    }

    public Setup withCorrection(boolean other) {
        return new Setup(pattern, rig, input, rateHz, level, mostLevel, other, swapped, built);
    }

    public Setup withSwapped(boolean other) {
        return new Setup(pattern, rig, input, rateHz, level, mostLevel, corrected, other, built);
    }

    /** Built of these parts, and played as before. */
    Setup withBuilt(WorstCase.Build other) {
        return new Setup(pattern, rig, input, rateHz, level, mostLevel, corrected, swapped, other);
    }

    /** Whether direct voltage is blocked on the way. */
    boolean isCoupled() {
        return rig.output().couplingFarads().isPresent() || !(rig.divider().coupling() instanceof Coupling.Direct);
    }

    /** As it is taken for. */
    Connection connection() {
        return new Connection(rig, input);
    }


    static double pinVoltsPerFullScale(Connection connection) {
        return connection.gain(Probe.PINS, MID_HZ).volts();
    }
}
