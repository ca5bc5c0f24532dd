package understudy.cli;

import java.util.Locale;
import java.util.Optional;
import understudy.trace.Certainty;
import understudy.trace.Conclusion;
import understudy.trace.Entry;
import understudy.trace.EventWords;
import understudy.trace.Finding;
import understudy.trace.Hunt;
import understudy.trace.Numbered;
import understudy.trace.Proof;
import understudy.trace.Step;
import understudy.trace.Suspect;
import understudy.trace.Unproven;

/** The end of a hunt: what stands convicted and why, what must be proven of a module, the repair, the closing. */
final class TraceEnding {

    private final TraceTalk talk;
    private final TraceDesk desk;

    TraceEnding(TraceTalk talk, TraceDesk desk) {
        this.talk = talk;
        this.desk = desk;
    }

    /** One thing after the other; what is not proven yet comes again. */
    void prove(Step.Prove prove) {
        talk.gap();
        talk.say("The readings point at the module, with " + Certainty.of(prove.probability()) + ". It is not convicted yet:"
                + " each of these alone makes a sound module look dead. Type how you found it (like: 13.8 V under load); no, if it"
                + " is not so; Enter, to come back to it.");
        for (Proof proof : prove.outstanding()) {
            talk.gap();
            talk.say(proof.demand());
            String line = desk.ask(proof.key() + ": ");
            if (line.toLowerCase(Locale.ROOT).matches("no?\\b.*|bad\\b.*")) {
                desk.keep(new Entry.Noted(proof.key() + " not as it should be: " + line));
                talk.say("Then the module may be sound. Mend that first, and inject again at the module's pin (type other).");
            } else if (!line.isEmpty()) {
                desk.keep(new Entry.Proven(proof, line));
            }
        }
        if (desk.hunt().next() instanceof Step.Prove still) {
            talk.gap();
            desk.ask("Still to be proven: " + String.join(", ", still.outstanding().stream().map(Proof::key).toList())
                    + ". Press Enter to go through them; or other, note ..., stop: ");
        }
    }

    void repair() {
        Finding finding = desk.hunt().finding();
        talk.gap();
        talk.say((finding.decided() ? "FOUND: " : "NOT DECIDED: ") + Conclusion.of(desk.hunt()).result());
        if (finding.decided() && finding.suspects().size() > 1) {
            talk.say("Nobody can inject between them: look at them, or move them.");
        }
        evidence(desk.hunt());
        if (finding.is(Suspect.Side.SENSOR)) {
            talk.say("One more injection makes that firmer: at " + desk.hunt().circuit().points()
                    .get(desk.hunt().circuit().firstInjectable()).name() + " (type other), with the level lowered (level 30 %) and"
                    + " everything moved: a corroded contact that passes the full signal shows then.");
        } else {
            talk.say("Take the clips off, the signal clip first, before you repair.");
        }
        String words = "";
        while (words.isEmpty()) {
            words = desk.ask("What did you repair? (stop, to do it and resume later): ",
                    "  new pins, both   what was repaired, in your words; the repair is then proven");
        }
        desk.keep(new Entry.Repaired(words));
    }

    /** The readings that say so. */
    private void evidence(Hunt hunt) {
        talk.say("The evidence:");
        for (Numbered event : hunt.standing()) {
            boolean counts = event.entry() instanceof Entry.Injected injected && !injected.place().onReference()
                    || event.entry() instanceof Entry.Proven;
            if (counts) {
                talk.lines(Paragraph.lines("  step " + event.number() + ", ", "    ", EventWords.step(hunt, event)));
            }
        }
    }

    /** @param proven the repair holds; otherwise the job is closed as it stands */
    void close(boolean proven) {
        talk.gap();
        talk.say(proven ? "The display came back: the way from " + desk.hunt().circuit().points()
                .get(desk.hunt().circuit().firstInjectable()).name() + " to the module is sound. Take the clips off, the signal clip"
                + " first, and plug the sensor in again."
                : "The job is closed as it stands. Take the clips off, the signal clip first.");
        Optional<Boolean> ownSensorWorks = ownSensor();
        if (ownSensorWorks.filter(works -> !works).isPresent()
                && !desk.yes("Then the fault is not gone, or there is a second one. Close all the same? yes or no: ")) {
            desk.ask("Type other to inject again, withdraw ... for the repair that did not help, or stop: ");
            return;
        }
        String words = desk.ask("Anything to add for the record? Enter for nothing: ");
        desk.keep(new Entry.Closed(words, ownSensorWorks));
        talk.gap();
        talk.say("Closed. What was not proven:");
        Unproven.of(desk.hunt()).forEach(sentence -> talk.lines(Paragraph.lines("  - ", "    ", sentence)));
    }

    private Optional<Boolean> ownSensor() {
        while (true) {
            String line = desk.ask("Does the display work with the vehicle's own sensor? yes, no, or not tried: ")
                    .toLowerCase(Locale.ROOT);
            switch (line) {
                case "yes", "y" -> {
                    return Optional.of(true);
                }
                case "no", "n" -> {
                    return Optional.of(false);
                }
                case "not tried", "not", "" -> {
                    return Optional.empty();
                }
                default -> talk.say("Type yes, no, or not tried.");
            }
        }
    }
}
