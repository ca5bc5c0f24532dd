package understudy.view;

import java.math.MathContext;
import java.util.Locale;
import understudy.pattern.Bursts;
import understudy.pattern.DrawnCycle;
import understudy.pattern.Hall;
import understudy.pattern.Output;
import understudy.pattern.Reluctor;
import understudy.pattern.Speed;
import understudy.pattern.Tone;
import understudy.pattern.WheelSignal;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.text.Json;

/** An output in words. */
public final class SignalWords {

    private SignalWords() {}

    public static String of(Output output, Speed speed) {
        String ratio = output.ratio() == 1 ? "" : ", " + number(output.ratio()) + " turns for one of the speed";
        return signal(output, speed) + ratio;
    }

    private static String signal(Output output, Speed speed) {
        if (output.signal() instanceof WheelSignal wheelSignal) {
            String teeth = count(wheelSignal.wheel().teeth().size(), "tooth", "teeth") + " over "
                    + degrees(wheelSignal.wheel().overDeg());
            if (wheelSignal.sensor() instanceof Hall hall) {
                return teeth + ", Hall, " + volts(hall.lowVolts()) + " and " + volts(hall.highVolts());
            }
            Reluctor reluctor = (Reluctor) wheelSignal.sensor();
            return teeth + ", reluctor, " + volts(reluctor.peakToPeakVolts()) + " peak to peak at "
                    + speed.print(reluctor.atHz()) + ", at most " + volts(reluctor.ceilingVolts())
                    + (reluctor.reversed() ? ", polarity reversed" : "");
        } else if (output.signal() instanceof Tone tone) {
            String shape = tone.shape().name().toLowerCase(Locale.ROOT);
            String repeats = tone.fixedFrequency()
                    ? hertz(tone.frequencyHz())
                    : number(tone.cyclesPerTurn()) + (tone.cyclesPerTurn() == 1 ? " cycle a turn" : " cycles a turn");
            return shape + ", " + repeats + ", " + volts(tone.peakToPeakVolts()) + " peak to peak"
                    + (tone.offsetVolts() == 0 ? "" : " around " + volts(tone.offsetVolts()));
        } else if (output.signal() instanceof Bursts bursts) {
            return count(bursts.atDeg().size(), "burst", "bursts") + " over " + degrees(bursts.overDeg()) + ", "
                    + hertz(bursts.frequencyHz()) + ", " + volts(bursts.peakVolts());
        }
        DrawnCycle drawn = (DrawnCycle) output.signal();
        return "drawn by " + drawn.points().size() + " points over " + degrees(drawn.overDeg());
    }

    public static String degrees(double degrees) {
        return new Quantity(degrees, Unit.DEGREE).rounded(6);
    }

    public static String volts(double volts) {
        return new Quantity(volts, Unit.VOLT).rounded(4);
    }

    public static String hertz(double hertz) {
        return new Quantity(hertz, Unit.HERTZ).rounded(4);
    }

    public static String seconds(double seconds) {
        return new Quantity(seconds, Unit.SECOND).rounded(4);
    }

    private static String count(int count, String one, String several) {
        return count + " " + (count == 1 ? one : several);
    }

    private static String number(double number) {
        return Json.number(number).round(new MathContext(6)).toPlainString();
    }

    /** A part of 1 in whole per cent: "95 %". */
    public static String percent(double part) {
        return Math.round(part * 100) + " %";
    }
}
