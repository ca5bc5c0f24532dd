package understudy.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import understudy.pattern.Hazard;
import understudy.quantity.NumberText;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.text.Times;
import understudy.trace.Certainty;
import understudy.trace.Circuit;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Judgement;
import understudy.trace.Listing;
import understudy.trace.Numbered;
import understudy.trace.Verdict;

/** What was done, with what, and in which order. */
final class Proceedings {

    private final Hunt hunt;
    private final Times times;

    Proceedings(Hunt hunt, Times times) {
        this.hunt = hunt;
        this.times = times;
    }

    List<Part> method() {
        Circuit circuit = hunt.circuit();
        return List.of(
                new Part.Sentence("A sensor circuit is a chain: the sensor, wires and connectors, the module that reads it. Here"
                        + " an audio device stood in for the sensor: it made the exact signal that a good sensor would give, and the"
                        + " signal was put into the circuit at a known place. What the module must then display can be"
                        + " computed. What it did display was read off and written down."),
                new Part.Sentence("If the display reads what it should, everything from that place to the display is sound. If"
                        + " it does not, the fault lies in that stretch. Injecting at one place after another narrows it down."),
                new Part.Sentence(reference()),
                new Part.Sentence("A reading can be wrong, so no single one decides. It is taken that "
                        + NumberText.percent(circuit.wronglyBad()) + " of readings look bad though the stretch is sound, and "
                        + NumberText.percent(circuit.wronglyGood()) + " look good though it is not. A part stands convicted once the"
                        + " readings together make it " + Certainty.of(circuit.confidence()) + " likely, if there is one fault."));
    }

    private String reference() {
        if (hunt.subjects().reference().isEmpty()) {
            return "There was no reference circuit, so rig and method were not proven on a circuit that works.";
        }
        String title = hunt.subjects().reference().get().circuit().title();
        List<Numbered> good = onReference(Verdict.GOOD);
        List<Numbered> bad = onReference(Verdict.BAD);
        String badWords = bad.isEmpty() ? "" : " There it also read bad (" + Listing.stepsOf(bad) + ").";
        if (!good.isEmpty()) {
            return "Rig and method were first proven on a circuit that works, \"" + title + "\": there the display read what it"
                    + " should (" + Listing.stepsOf(good) + ")." + badWords;
        }
        return "Rig and method were not proven on the reference circuit, \"" + title + "\"." + badWords
                + wentOn().map(reason -> " The work went on without that, for this reason: \"" + reason + "\"").orElse("");
    }

    private List<Numbered> onReference(Verdict verdict) {
        return hunt.standing().stream().filter(event -> event.entry() instanceof Entry.Injected injected
                && injected.place().onReference() && Judgement.of(injected).verdict() == verdict).toList();
    }

    private Optional<String> wentOn() {
        return hunt.standing().stream().filter(event -> event.entry() instanceof Entry.WentOn)
                .map(event -> ((Entry.WentOn) event.entry()).reason()).findFirst();
    }

    List<Part> equipment() {
        List<Part.Fact> facts = new ArrayList<>();
        facts.add(new Part.Fact("Pattern", hunt.subjects().suspect().pattern().title()));
        hunt.job().equipment().rig().ifPresent(rig -> facts.add(new Part.Fact("Rig", rig)));
        hunt.job().equipment().input().ifPresent(input -> facts.add(new Part.Fact("Module's input", input)));
        var pin = hunt.job().equipment().pinVolts();
        facts.add(new Part.Fact("Allowed on a pin before clipping on", new Quantity(pin.from(), Unit.VOLT).rounded(3) + " to "
                + new Quantity(pin.to(), Unit.VOLT).rounded(3)));
        List<Part> parts = new ArrayList<>();
        parts.add(new Part.Facts(facts));
        if (!hunt.job().equipment().words().isEmpty()) {
            parts.add(new Part.Bullets(hunt.job().equipment().words()));
        }
        if (hunt.job().equipment().rig().isEmpty()) {
            parts.add(new Part.Sentence("No rig is named, so nothing is known of its calibration."));
        }
        return parts;
    }

    List<Part> injections() {
        List<InjectionRow> rows = InjectionRow.of(hunt, times);
        return List.of(rows.isEmpty() ? new Part.Sentence("Nothing was injected.") : new Part.Injections(rows));
    }

    /** Notes, what was withdrawn, and pins that were left alone. */
    Optional<Part> remarks() {
        List<String> remarks = new ArrayList<>();
        for (Numbered event : hunt.events()) {
            String step = "Step " + event.number() + ", " + times.of(event.at()) + ": ";
            if (!event.standing() && !(event.entry() instanceof Entry.Injected)) {
                remarks.add(step + "withdrawn, \"" + InjectionRow.withdrawal(hunt, event) + "\"");
            } else if (event.entry() instanceof Entry.Noted noted) {
                remarks.add(step + noted.words());
            } else if (event.entry() instanceof Entry.PinMeasured pin && !hunt.pinAllowed(pin)) {
                remarks.add(step + new Quantity(pin.volts(), Unit.VOLT).rounded(3) + " measured on the pin at "
                        + hunt.name(pin.place()) + ", which is out of what is allowed; nothing may be clipped on then.");
            }
        }
        return remarks.isEmpty() ? Optional.empty() : Optional.of(new Part.Bullets(remarks));
    }

    List<Part> cautions() {
        List<Part> parts = new ArrayList<>();
        for (Numbered event : hunt.standing()) {
            if (event.entry() instanceof Entry.Cautioned cautioned) {
                parts.add(new Part.Sentence("Read and ticked before the work began (" + times.of(event.at()) + "): "
                        + String.join("; ", cautioned.hazards().stream().map(Hazard::title).toList()) + "."));
            }
        }
        if (parts.isEmpty()) {
            parts.add(new Part.Sentence("The cautions were not ticked."));
        }
        parts.add(new Part.Sentence("This report states what one signal showed of one circuit at one time. Local codes, the maker's"
                + " instructions and licensed practice come first; it replaces none of them."));
        return parts;
    }
}
