package understudy.store;

import understudy.quantity.Unit;
import understudy.rig.Amounts;
import understudy.rig.AudioOutput;
import understudy.rig.Coupling;
import understudy.rig.Divider;

/** A rig's parts in phrases. */
public final class RigWords {

    private RigWords() {}

    public static String output(NamedRig rig) {
        return output(rig.output(), rig.calibrated());
    }

    public static String output(AudioOutput output, boolean calibrated) {
        String how = calibrated ? ", calibrated" : output.equals(AudioOutput.NOMINAL) ? ", assumed: not calibrated"
                : ", as given: not calibrated";
        return "full scale " + Amounts.print(output.fullScaleVolts(), Unit.VOLT) + " peak" + how
                + (output.inverted() ? "; turns the signal upside down" : "");
    }

    public static String outputParts(AudioOutput output) {
        return Amounts.print(output.outputOhms(), Unit.OHM) + ", " + output.couplingFarads()
                .map(farads -> "through " + Amounts.print(farads, Unit.FARAD)).orElse("no capacitor")
                + ", " + Amounts.print(output.popVolts(), Unit.VOLT) + " step at power-up";
    }

    public static String divider(NamedRig rig) {
        return rig.divider().map(RigWords::words).orElse("not built yet");
    }

    public static String words(Divider divider) {
        String coupling = "";
        if (divider.coupling() instanceof Coupling.Capacitor capacitor) {
            coupling = ", capacitor " + Amounts.print(capacitor.farads(), Unit.FARAD);
        } else if (divider.coupling() instanceof Coupling.Transformer transformer) {
            coupling = ", transformer " + transformer.turns() + " of " + Amounts.print(transformer.henries(), Unit.HENRY);
        }
        return "series " + Amounts.print(divider.seriesOhms(), Unit.OHM) + ", "
                + divider.shuntOhms().map(shunt -> "shunt " + Amounts.print(shunt, Unit.OHM)).orElse("no shunt") + coupling;
    }
}
