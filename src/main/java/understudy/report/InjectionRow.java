package understudy.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import understudy.quantity.NumberText;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.text.Times;
import understudy.trace.Answer;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Judgement;
import understudy.trace.Listing;
import understudy.trace.Numbered;
import understudy.trace.Place;
import understudy.trace.Verdict;

/**
 * One injection in words.
 *
 * @param stage     which circuit, and whether before or after a repair
 * @param number    of the step
 * @param played    speed, frequency, level, and what was measured, a line each
 * @param meaning   why the verdict is as it is, in a few words
 * @param withdrawn why it does not count, if it was withdrawn
 */
record InjectionRow(String stage, int number, String at, String where, List<String> played, String expected, String displayed,
        Verdict verdict, String meaning, Optional<String> withdrawn) {

    static List<InjectionRow> of(Hunt hunt, Times times) {
        List<InjectionRow> rows = new ArrayList<>();
        Map<Place, Double> pinVolts = new HashMap<>();
        int repairs = 0;
        for (Numbered event : hunt.events()) {
            if (event.entry() instanceof Entry.PinMeasured pin && event.standing()) {
                pinVolts.put(pin.place(), pin.volts());
            } else if (event.entry() instanceof Entry.Repaired && event.standing()) {
                repairs++;
            } else if (event.entry() instanceof Entry.Injected injected) {
                rows.add(row(hunt, event, injected, stage(injected, repairs), times.of(event.at()),
                        Optional.ofNullable(pinVolts.get(injected.place()))));
            }
        }
        return rows;
    }

    private static String stage(Entry.Injected injected, int repairs) {
        String circuit = injected.place().onReference() ? "On the reference circuit, which works" : "On the suspect circuit";
        return circuit + (repairs == 0 ? "" : repairs == 1 ? ", after the repair" : ", after repair " + repairs);
    }

    private static InjectionRow row(Hunt hunt, Numbered event, Entry.Injected injected, String stage, String at,
            Optional<Double> pinVolts) {
        Judgement judgement = Judgement.of(injected);
        List<String> played = new ArrayList<>();
        played.add(hunt.subjects().of(injected.place()).pattern().speed().print(injected.speedHz()) + " = "
                + new Quantity(injected.frequencyHz(), Unit.HERTZ).rounded(4));
        played.add(injected.levelPart() == 1 ? "full level" : NumberText.percent(injected.levelPart()) + " of the level");
        pinVolts.ifPresent(volts -> played.add("pin before: " + new Quantity(volts, Unit.VOLT).rounded(3)));
        injected.clipPart().ifPresent(part -> played.add("clips: " + NumberText.percent(part) + " of the volts"));
        return new InjectionRow(stage, event.number(), at, hunt.name(injected.place()), played,
                injected.expected().toString(), displayed(hunt, injected), judgement.verdict(),
                Listing.capital(judgement.meaning()), event.standing() ? Optional.empty() : Optional.of(withdrawal(hunt, event)));
    }

    private static String displayed(Hunt hunt, Entry.Injected injected) {
        Answer answer = injected.answer();
        String words = answer.kind() == Answer.Kind.VALUE ? injected.expected().unit().exactly(answer.value())
                : answer.kind().words();
        return words + injected.moved().map(index -> ": " + hunt.circuitOf(injected.place()).suspects().get(index).name()).orElse("");
    }

    static String withdrawal(Hunt hunt, Numbered event) {
        return hunt.events().stream().map(Numbered::entry).filter(entry -> entry instanceof Entry.Withdrawn withdrawn
                        && withdrawn.number() == event.number())
                .map(entry -> ((Entry.Withdrawn) entry).reason()).findFirst().orElseThrow();
    }
}
