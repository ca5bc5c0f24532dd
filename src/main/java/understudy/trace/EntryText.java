package understudy.trace;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import understudy.pattern.Hazard;
import understudy.reading.DisplayUnit;
import understudy.reading.Expected;
import understudy.refusal.Refused;

/**
 * An entry as names and texts, as it is stored and exported; and back.
 *
 * @param kind   which entry it is
 * @param values by name; numbers in SI units, or in the unit that stands beside them
 */
public record EntryText(String kind, Map<String, String> values) {

    public EntryText {
        values = Map.copyOf(values);
    }

    public static EntryText of(Entry entry) {
        Map<String, String> v = new LinkedHashMap<>();
        if (entry instanceof Entry.Cautioned cautioned) {
            v.put("hazards", String.join(" ", cautioned.hazards().stream().map(Hazard::key).toList()));
            return new EntryText("cautioned", v);
        } else if (entry instanceof Entry.PinMeasured pin) {
            place(v, pin.place());
            v.put("volts", Double.toString(pin.volts()));
            return new EntryText("pin-measured", v);
        } else if (entry instanceof Entry.Injected injected) {
            return injected(v, injected);
        } else if (entry instanceof Entry.WentOn wentOn) {
            v.put("reason", wentOn.reason());
            return new EntryText("went-on", v);
        } else if (entry instanceof Entry.Proven proven) {
            v.put("proof", proven.proof().key());
            v.put("how", proven.how());
            return new EntryText("proven", v);
        } else if (entry instanceof Entry.Withdrawn withdrawn) {
            v.put("number", Integer.toString(withdrawn.number()));
            v.put("reason", withdrawn.reason());
            return new EntryText("withdrawn", v);
        } else if (entry instanceof Entry.Noted noted) {
            v.put("words", noted.words());
            return new EntryText("noted", v);
        } else if (entry instanceof Entry.Repaired repaired) {
            v.put("words", repaired.words());
            return new EntryText("repaired", v);
        }
        if (entry instanceof Entry.Corrected corrected) {
            v.put("detail", corrected.detail().key());
            v.put("was", corrected.was());
            v.put("words", corrected.words());
            return new EntryText("corrected", v);
        }
        Entry.Closed closed = (Entry.Closed) entry;
        v.put("words", closed.words());
        closed.ownSensorWorks().ifPresent(works -> v.put("own-sensor-works", Boolean.toString(works)));
        return new EntryText("closed", v);
    }

    private static void place(Map<String, String> v, Place place) {
        v.put("circuit", place.onReference() ? "reference" : "suspect");
        v.put("point", Integer.toString(place.point()));
    }

    private static EntryText injected(Map<String, String> v, Entry.Injected injected) {
        place(v, injected.place());
        v.put("speed-hz", Double.toString(injected.speedHz()));
        v.put("frequency-hz", Double.toString(injected.frequencyHz()));
        v.put("level-part", Double.toString(injected.levelPart()));
        v.put("expected", Double.toString(injected.expected().value()));
        v.put("expected-low", Double.toString(injected.expected().low()));
        v.put("expected-high", Double.toString(injected.expected().high()));
        v.put("expected-step", Double.toString(injected.expected().step()));
        v.put("unit", injected.expected().unit().symbol());
        v.put("display", injected.answer().kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'));
        if (injected.answer().kind() == Answer.Kind.VALUE) {
            v.put("displayed", Double.toString(injected.answer().value()));
        }
        injected.clipPart().ifPresent(part -> v.put("clip-part", Double.toString(part)));
        injected.moved().ifPresent(moved -> v.put("moved", Integer.toString(moved)));
        return new EntryText("injected", v);
    }

    /** @throws Refused when this is not what {@link #of} writes */
    public Entry entry() {
        return switch (kind) {
            case "cautioned" -> new Entry.Cautioned(Arrays.stream(text("hazards").split(" ")).filter(key -> !key.isEmpty())
                    .map(this::hazard).toList());
            case "pin-measured" -> new Entry.PinMeasured(place(), number("volts"));
            case "injected" -> injected();
            case "went-on" -> new Entry.WentOn(text("reason"));
            case "proven" -> new Entry.Proven(Proof.of(text("proof")).orElseThrow(() -> wrong("proof")), text("how"));
            case "withdrawn" -> new Entry.Withdrawn(whole("number"), text("reason"));
            case "noted" -> new Entry.Noted(text("words"));
            case "corrected" -> new Entry.Corrected(Detail.of(text("detail")).orElseThrow(() -> wrong("detail")), text("was"), text("words"));
            case "repaired" -> new Entry.Repaired(text("words"));
            case "closed" -> new Entry.Closed(text("words"), Optional.ofNullable(values.get("own-sensor-works"))
                    .map(Boolean::parseBoolean));
            default -> throw new Refused("an entry \"" + kind + "\" is not known", "a newer Understudy may know it");
        };
    }

    private Entry injected() {
        Expected expected = new Expected(number("expected"), number("expected-low"), number("expected-high"),
                number("expected-step"), unit());
        String display = text("display");
        Answer.Kind kind = Arrays.stream(Answer.Kind.values())
                .filter(one -> one.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-').equals(display))
                .findFirst().orElseThrow(() -> wrong("display"));
        Answer answer = kind == Answer.Kind.VALUE ? Answer.value(number("displayed")) : Answer.of(kind);
        return new Entry.Injected(place(), number("speed-hz"), number("frequency-hz"), number("level-part"), expected, answer,
                values.containsKey("clip-part") ? Optional.of(number("clip-part")) : Optional.empty(),
                values.containsKey("moved") ? Optional.of(whole("moved")) : Optional.empty());
    }

    private Place place() {
        return new Place(text("circuit").equals("reference"), whole("point"));
    }

    private Hazard hazard(String key) {
        return Arrays.stream(Hazard.values()).filter(hazard -> hazard.key().equals(key)).findFirst()
                .orElseThrow(() -> wrong("hazards"));
    }

    private DisplayUnit unit() {
        return Arrays.stream(DisplayUnit.values()).filter(unit -> unit.symbol().equals(text("unit"))).findFirst()
                .orElseThrow(() -> wrong("unit"));
    }

    private String text(String name) {
        return Optional.ofNullable(values.get(name)).orElseThrow(() -> wrong(name));
    }

    private double number(String name) {
        try {
            double number = Double.parseDouble(text(name));
            if (Double.isFinite(number)) {
                return number;
            }
        } catch (NumberFormatException e) {
            // said below
        }
        throw wrong(name);
    }

    private int whole(String name) {
        double number = number(name);
        if (number != Math.rint(number)) {
            throw wrong(name);
        }
        return (int) number;
    }

    private Refused wrong(String name) {
        return new Refused("an entry \"" + kind + "\" has \"" + name + ": " + values.getOrDefault(name, "(nothing)")
                + "\"", "it may be damaged, or of a newer Understudy");
    }
}
