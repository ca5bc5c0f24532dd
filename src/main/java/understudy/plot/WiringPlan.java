package understudy.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.rig.Coupling;
import understudy.rig.Divider;

/** Which part sits where between jack and clips, from left to right, for whatever draws it. */
record WiringPlan(Divider divider, boolean pair) {

    enum Kind { RESISTOR, CAPACITOR, TRANSFORMER }

    record Part(Kind kind, String name, String value) {}

    /** One step to the right: in the upper line, in the lower line, or both; a transformer is in both. */
    record Place(Optional<Part> upper, Optional<Part> lower) {}

    List<Place> places() {
        boolean twin = pair && !(divider.coupling() instanceof Coupling.Transformer);
        List<Place> places = new ArrayList<>();
        String ohms = print(divider.seriesOhms().nominal(), Unit.OHM);
        places.add(new Place(Optional.of(new Part(Kind.RESISTOR, "R1", ohms)),
                twin ? Optional.of(new Part(Kind.RESISTOR, "R3", ohms)) : Optional.empty()));
        if (divider.coupling() instanceof Coupling.Capacitor capacitor) {
            String farads = print(capacitor.farads().nominal(), Unit.FARAD);
            places.add(new Place(Optional.of(new Part(Kind.CAPACITOR, "C1", farads)),
                    twin ? Optional.of(new Part(Kind.CAPACITOR, "C2", farads)) : Optional.empty()));
        } else if (divider.coupling() instanceof Coupling.Transformer transformer) {
            Optional<Part> both = Optional.of(new Part(Kind.TRANSFORMER, "T1", transformer.turns()));
            places.add(new Place(both, both));
        }
        return places;
    }

    Optional<Part> shunt() {
        return divider.shuntOhms().map(ohms -> new Part(Kind.RESISTOR, "R2", print(ohms.nominal(), Unit.OHM)));
    }

    /** Neither clip is on the audio device's ground. */
    boolean floating() {
        return pair || divider.coupling() instanceof Coupling.Transformer;
    }

    String upperClip() {
        return "signal clip, LAST";
    }

    String lowerClip() {
        return floating() ? "return clip, FIRST" : "ground clip, FIRST";
    }

    String note() {
        return floating()
                ? "Measure both pins. Return clip on first, signal clip last; off in reverse."
                : "Measure the pin. Ground clip on first, signal clip last; off in reverse.";
    }

    private static String print(double value, Unit unit) {
        return new Quantity(value, unit).rounded(3);
    }
}
