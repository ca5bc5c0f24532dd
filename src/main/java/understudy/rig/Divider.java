package understudy.rig;

import java.util.Optional;

/**
 * The box between the audio jack and the clips.
 *
 * @param seriesOhms between the jack and the coupling; for a differential input without a transformer there is another
 *                   one like it in the return, so that neither clip is a way to ground without a resistor
 * @param shuntOhms  across the clips, behind the coupling; or none
 * @param coupling   capacitor, transformer, or straight
 */
public record Divider(Spread seriesOhms, Optional<Spread> shuntOhms, Coupling coupling) {

    public Divider {
        Bounds.check("series resistor", seriesOhms, Bounds.OHMS);
        shuntOhms.ifPresent(shunt -> Bounds.check("shunt resistor", shunt, Bounds.OHMS));
    }

    Divider settled(Pick pick) {
        return new Divider(pick.settle(seriesOhms), shuntOhms.map(pick::settle), settled(coupling, pick));
    }

    private static Coupling settled(Coupling coupling, Pick pick) {
        if (coupling instanceof Coupling.Capacitor capacitor) {
            return new Coupling.Capacitor(pick.settleCoupling(capacitor.farads()));
        } else if (coupling instanceof Coupling.Transformer t) {
            return new Coupling.Transformer(pick.settle(t.ratio()), pick.settleCoupling(t.henries()),
                    pick.settle(t.primaryOhms()), pick.settle(t.secondaryOhms()), t.mostVoltSeconds());
        }
        return coupling;
    }
}
