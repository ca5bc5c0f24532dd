package understudy.rig;

import java.util.ArrayList;
import java.util.List;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Refused;

/**
 * What two readings of a voltmeter tell of an unknown input: a voltage behind a resistance. With a known resistor R from
 * the pin to ground, the input's resistance is R (open volts / loaded volts - 1), less what the meter itself draws.
 *
 * @param openVolts      of the input itself, without the meter
 * @param leastOpenVolts as low as the meter's error allows
 * @param mostOpenVolts  as high as it allows
 * @param ohms           of the input
 * @param leastOhms      as low as the errors of meter and resistor allow
 * @param mostOhms       as high as they allow; infinite when the loaded reading may be zero
 * @param kinds          that fit, the likeliest first; empty when none does
 * @param advice         what to make of it, in plain sentences
 */
public record UnknownInput(
        double openVolts,
        double leastOpenVolts,
        double mostOpenVolts,
        double ohms,
        double leastOhms,
        double mostOhms,
        List<InputKind> kinds,
        List<String> advice) {

    private static final double QUIET_VOLTS = 0.3;
    private static final double FEED_OHMS = 300;

    public UnknownInput {
        kinds = List.copyOf(kinds);
        advice = List.copyOf(advice);
    }

    /**
     * Works it out.
     *
     * @param readOpenVolts   the meter's reading from pin to ground, sensor unplugged, key on
     * @param knownOhms       the resistor then put from the pin to ground, 1 kohm to 10 Mohm
     * @param readLoadedVolts the reading with that resistor
     */
    public static UnknownInput from(double readOpenVolts, Spread knownOhms, double readLoadedVolts, Meter meter) {
        Range volts = new Range(0, 60, Unit.VOLT);
        Bounds.check("reading without the resistor", readOpenVolts, volts);
        Bounds.check("reading with the resistor", readLoadedVolts, volts);
        Bounds.check("known resistor", knownOhms, new Range(1e3, 1e7, Unit.OHM));
        double openOff = meter.offVolts(readOpenVolts);
        double loadedOff = meter.offVolts(readLoadedVolts);
        if (readOpenVolts <= QUIET_VOLTS) {
            return quiet(readOpenVolts, openOff);
        }
        if (readLoadedVolts - loadedOff > readOpenVolts + openOff) {
            throw new Refused("the reading rises from " + Bounds.print(readOpenVolts, Unit.VOLT) + " to "
                    + Bounds.print(readLoadedVolts, Unit.VOLT) + " with a resistor to ground",
                    "swap the two readings, or measure again: something else moves the voltage");
        }
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        double leastOpen = Double.POSITIVE_INFINITY;
        double mostOpen = 0;
        for (int ends = 0; ends < 8; ends++) {
            double open = readOpenVolts + sign(ends) * openOff;
            double loaded = Math.max(0, readLoadedVolts + sign(ends >> 1) * loadedOff);
            double ohms = ohms(open, knownOhms.at(sign(ends >> 2)), loaded, meter);
            least = Math.min(least, ohms);
            most = Math.max(most, ohms);
            leastOpen = Math.min(leastOpen, unloaded(open, ohms, meter));
            mostOpen = Math.max(mostOpen, unloaded(open, ohms, meter));
        }
        double ohms = ohms(readOpenVolts, knownOhms.nominal(), readLoadedVolts, meter);
        return judged(unloaded(readOpenVolts, ohms, meter), leastOpen, mostOpen, ohms, least, most);
    }

    private static int sign(int bit) {
        return (bit & 1) == 1 ? 1 : -1;
    }

    /** The same source drives the meter alone, and the meter beside the known resistor. */
    private static double ohms(double openVolts, double knownOhms, double loadedVolts, Meter meter) {
        double both = 1 / (1 / knownOhms + 1 / meter.inputOhms());
        double amps = loadedVolts / both - openVolts / meter.inputOhms();
        return amps <= 0 ? Double.POSITIVE_INFINITY : Math.max(0, (openVolts - loadedVolts) / amps);
    }

    private static double unloaded(double readVolts, double ohms, Meter meter) {
        return Double.isInfinite(ohms) ? readVolts : readVolts * (1 + ohms / meter.inputOhms());
    }

    private static UnknownInput quiet(double readVolts, double offVolts) {
        return new UnknownInput(readVolts, Math.max(0, readVolts - offVolts), readVolts + offVolts, Double.NaN, 0,
                Double.POSITIVE_INFINITY,
                List.of(InputKind.RELUCTOR_ADAPTIVE, InputKind.RELUCTOR_HYSTERESIS, InputKind.RESISTIVE),
                List.of("No voltage of its own: a reluctor input without bias, a ground wire, or a module without "
                        + "power. Volts do not distinguish these.",
                        "Check that the key is on and the module has its supply and ground; then measure ohms from "
                        + "the pin to ground with the key off: near 0 is a ground wire."));
    }

    private static UnknownInput judged(
            double open, double leastOpen, double mostOpen, double ohms, double least, double most) {
        List<InputKind> kinds = new ArrayList<>();
        List<String> advice = new ArrayList<>();
        if (most < FEED_OHMS) {
            advice.add("Stop: this is a supply, not an input. Do not clip a rig on to it.");
        } else {
            if (mostOpen >= 1 && leastOpen <= 3) {
                kinds.add(InputKind.RELUCTOR_BIASED_PAIR);
                kinds.add(InputKind.RELUCTOR_ADAPTIVE_PAIR);
                advice.add("Measure the second pin too: on a pair both show the same voltage.");
            }
            if (mostOpen >= 4.5 && leastOpen <= 5.5 && most >= 1e3 && least <= 10e3) {
                kinds.add(InputKind.PULLED_UP_5_V);
            }
            if (mostOpen >= 7.5 && leastOpen <= 16 && most >= 470 && least <= 4.7e3) {
                kinds.add(InputKind.PULLED_UP_8_TO_12_V);
                kinds.add(InputKind.TWO_WIRE_CURRENT);
            }
            if (kinds.isEmpty()) {
                advice.add("No kind that is usual fits. Do not clip on before the circuit's data are known.");
            }
        }
        if (most > 3 * Math.max(least, 1)) {
            advice.add("The readings leave much room: repeat with a known resistor nearer to "
                    + Bounds.print(Math.min(Math.max(ohms, 1e3), 1e6), Unit.OHM) + ".");
        }
        return new UnknownInput(open, leastOpen, mostOpen, ohms, least, most, kinds, advice);
    }
}
