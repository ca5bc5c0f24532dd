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
import understudy.quantity.NumberText;
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
                    + NumberText.of(wheelSignal.wheel().overDeg(), Unit.DEGREE, 6);
            if (wheelSignal.sensor() instanceof Hall hall) {
                return teeth + ", Hall, " + NumberText.of(hall.lowVolts(), Unit.VOLT) + " and " + NumberText.of(hall.highVolts(), Unit.VOLT);
            }
            Reluctor reluctor = (Reluctor) wheelSignal.sensor();
            return teeth + ", reluctor, " + NumberText.of(reluctor.peakToPeakVolts(), Unit.VOLT) + " peak to peak at "
                    + speed.print(reluctor.atHz()) + ", at most " + NumberText.of(reluctor.ceilingVolts(), Unit.VOLT)
                    + (reluctor.reversed() ? ", polarity reversed" : "");
        } else if (output.signal() instanceof Tone tone) {
            String shape = tone.shape().name().toLowerCase(Locale.ROOT);
            String repeats = tone.fixedFrequency()
                    ? NumberText.of(tone.frequencyHz(), Unit.HERTZ)
                    : number(tone.cyclesPerTurn()) + (tone.cyclesPerTurn() == 1 ? " cycle a turn" : " cycles a turn");
            return shape + ", " + repeats + ", " + NumberText.of(tone.peakToPeakVolts(), Unit.VOLT) + " peak to peak"
                    + (tone.offsetVolts() == 0 ? "" : " around " + NumberText.of(tone.offsetVolts(), Unit.VOLT));
        } else if (output.signal() instanceof Bursts bursts) {
            return count(bursts.atDeg().size(), "burst", "bursts") + " over " + NumberText.of(bursts.overDeg(), Unit.DEGREE, 6) + ", "
                    + NumberText.of(bursts.frequencyHz(), Unit.HERTZ) + ", " + NumberText.of(bursts.peakVolts(), Unit.VOLT);
        }
        DrawnCycle drawn = (DrawnCycle) output.signal();
        return "drawn by " + drawn.points().size() + " points over " + NumberText.of(drawn.overDeg(), Unit.DEGREE, 6);
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
