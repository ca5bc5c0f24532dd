package understudy.store;

import understudy.trace.Finding;
import understudy.trace.Hunt;
import understudy.trace.Step;

/** How a hunt stands, in a few words for a list. */
record State(String words, boolean closed) {

    static State of(Hunt hunt) {
        Step next = hunt.next();
        if (next instanceof Step.Caution) {
            return open("begun");
        } else if (next instanceof Step.Inject inject) {
            return open(switch (inject.purpose()) {
                case METHOD -> "proving the method";
                case HUNT -> "hunting";
                case REPAIR -> "repaired, not proven yet: " + hunt.finding().names();
            });
        } else if (next instanceof Step.Prove) {
            return open("suspected, not proven yet: " + hunt.finding().names());
        } else if (next instanceof Step.Repair) {
            return open(convicted(hunt.finding()));
        } else if (next instanceof Step.Close) {
            return open("repaired and proven: " + hunt.finding().names());
        }
        return new State("closed, " + (hunt.repairProven()
                ? "repaired and proven: " + hunt.finding().names()
                : convicted(hunt.finding())), true);
    }

    private static State open(String words) {
        return new State(words, false);
    }

    private static String convicted(Finding finding) {
        return finding.decided() ? "convicted: " + finding.names() : "none convicted, likeliest: " + finding.names();
    }
}
