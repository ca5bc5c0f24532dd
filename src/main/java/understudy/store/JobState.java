package understudy.store;

import understudy.trace.Finding;
import understudy.trace.Hunt;
import understudy.trace.NextStep;

/** How a hunt stands, in a few words for a list. */
record JobState(String words, boolean closed) {

    static JobState of(Hunt hunt) {
        NextStep next = hunt.next();
        if (next instanceof NextStep.Caution) {
            return open("begun");
        } else if (next instanceof NextStep.Inject inject) {
            return open(switch (inject.purpose()) {
                case METHOD -> "proving the method";
                case HUNT -> "hunting";
                case REPAIR -> "repaired, not proven yet: " + hunt.finding().names();
            });
        } else if (next instanceof NextStep.Prove) {
            return open("suspected, not proven yet: " + hunt.finding().names());
        } else if (next instanceof NextStep.Repair) {
            return open(convicted(hunt.finding()));
        } else if (next instanceof NextStep.Close) {
            return open("repaired and proven: " + hunt.finding().names());
        }
        return new JobState("closed, " + (hunt.repairProven()
                ? "repaired and proven: " + hunt.finding().names()
                : convicted(hunt.finding())), true);
    }

    private static JobState open(String words) {
        return new JobState(words, false);
    }

    private static String convicted(Finding finding) {
        return finding.decided() ? "convicted: " + finding.names() : "none convicted, likeliest: " + finding.names();
    }
}
