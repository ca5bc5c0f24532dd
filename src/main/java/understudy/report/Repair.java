package understudy.report;

import java.util.ArrayList;
import java.util.List;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Judgement;
import understudy.trace.Numbered;
import understudy.trace.Verdict;

/** What a job holds on its repairs. */
final class Repair {

    private Repair() {}

    /** Every repair, the ones that did not help too. */
    static List<Numbered> all(Hunt hunt) {
        return hunt.standing().stream().filter(event -> event.entry() instanceof Entry.Repaired).toList();
    }

    /** The good injections after the latest repair, once they prove it; empty as long as they do not. */
    static List<Numbered> proof(Hunt hunt) {
        List<Numbered> proof = new ArrayList<>();
        for (Numbered event : hunt.standing()) {
            if (event.entry() instanceof Entry.Repaired) {
                proof.clear();
            } else if (event.entry() instanceof Entry.Injected injected && !injected.place().onReference()
                    && Judgement.of(injected).verdict() == Verdict.GOOD) {
                proof.add(event);
            }
        }
        return hunt.repairProven() ? proof : List.of();
    }
}
