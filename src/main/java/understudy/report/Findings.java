package understudy.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import understudy.text.Times;
import understudy.trace.Answer;
import understudy.trace.Certainty;
import understudy.trace.Conclusion;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Listing;
import understudy.trace.Numbered;
import understudy.trace.Proof;
import understudy.trace.Suspect;
import understudy.trace.Unproven;

/** What was found, and what it rests on. */
final class Findings {

    private final Hunt hunt;
    private final Conclusion conclusion;

    Findings(Hunt hunt) {
        this.hunt = hunt;
        this.conclusion = Conclusion.of(hunt);
    }

    List<Part> result() {
        List<Part> parts = new ArrayList<>();
        parts.add(new Part.Sentence(conclusion.result()));
        if (hunt.repairProven()) {
            parts.add(new Part.Sentence("It was repaired, and the repair is proven: " + proofWords()));
        } else if (!Repair.all(hunt).isEmpty()) {
            parts.add(new Part.Sentence("It was repaired. That the repair holds is not proven."));
        }
        hunt.closing().ifPresent(closed -> {
            if (!closed.words().isBlank()) {
                parts.add(new Part.Sentence("Closed with the words: \"" + closed.words() + "\""));
            }
            closed.ownSensorWorks().ifPresent(works -> parts.add(new Part.Sentence(works
                    ? "With the vehicle's own sensor the display works again."
                    : "With the vehicle's own sensor the display does not work.")));
        });
        return parts;
    }

    List<Part> reasons() {
        List<Part> parts = new ArrayList<>();
        if (conclusion.evidence().isEmpty()) {
            parts.add(new Part.Sentence("There is no evidence yet."));
        } else {
            parts.add(new Part.Bullets(conclusion.evidence()));
        }
        if (!conclusion.against().isEmpty()) {
            parts.add(new Part.Sentence("What speaks against it, and is weighed in the probability:"));
            parts.add(new Part.Bullets(conclusion.against()));
        }
        return parts;
    }

    boolean aboutTheModule() {
        return hunt.finding().decided() && hunt.finding().touches(Suspect.Side.MODULE) || !hunt.proven().isEmpty();
    }

    List<Part> moduleProofs() {
        return List.of(new Part.Sentence("Each of these alone makes a sound module look dead."),
                new Part.Ticks(Arrays.stream(Proof.values()).map(proof -> new Part.Tick(proof.demand(), how(proof))).toList()));
    }

    private Optional<String> how(Proof proof) {
        Optional<String> how = Optional.empty();
        for (Numbered event : hunt.standing()) {
            if (event.entry() instanceof Entry.Proven proven && proven.proof() == proof) {
                how = Optional.of((proven.how().isBlank() ? "ticked" : proven.how()) + " (step " + event.number() + ")");
            }
        }
        return how;
    }

    List<Part> repair(Times times) {
        List<Part> parts = new ArrayList<>();
        parts.add(new Part.Bullets(Repair.all(hunt).stream().map(event -> times.of(event.at()) + ", step " + event.number() + ": "
                + ((Entry.Repaired) event.entry()).words()).toList()));
        if (hunt.repairProven()) {
            parts.add(new Part.Sentence("Then the signal was injected again. " + Listing.capital(proofWords())));
            parts.add(new Part.Drawing(CircuitDrawing.repaired(hunt)));
        } else {
            parts.add(new Part.Sentence("That the repair holds is not proven: no injection where the sensor's signal enters has"
                    + " read good since."));
        }
        return parts;
    }

    /** Where the sensor's signal enters, which alone proves the whole way. */
    private String proofWords() {
        Numbered proof = Repair.proof(hunt).stream().filter(event -> ((Entry.Injected) event.entry()).place().point()
                == hunt.circuit().firstInjectable()).reduce((first, last) -> last).orElseThrow();
        Entry.Injected injected = (Entry.Injected) proof.entry();
        return "injected at " + hunt.name(injected.place()) + ", the display reads " + shown(injected) + " (step " + proof.number()
                + "); expected: " + injected.expected() + ".";
    }

    private static String shown(Entry.Injected injected) {
        return injected.answer().kind() == Answer.Kind.VALUE
                ? injected.expected().unit().exactly(injected.answer().value()) : injected.answer().kind().words();
    }

    /** Of the job's own evidence, and of this report's. */
    List<String> unproven() {
        List<String> sentences = new ArrayList<>(Unproven.of(hunt));
        if (conclusion.convicted().isEmpty() && hunt.finding().decided()) {
            sentences.add("The module was not convicted, though it has a probability of "
                    + Certainty.of(hunt.finding().probability()) + ".");
        }
        return sentences;
    }
}
