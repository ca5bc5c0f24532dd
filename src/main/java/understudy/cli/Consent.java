package understudy.cli;

import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import understudy.pattern.Hazard;
import understudy.pattern.Pattern;
import understudy.refusal.Refused;

/** Lets nobody play who hasn't read the cautions: they are shown once, and a yes to them is kept. */
final class Consent {

    private final Surroundings surroundings;
    private final boolean saidYes;
    private final Agreement agreement;

    /** @param saidYes the command line says yes, for this time */
    Consent(Surroundings surroundings, boolean saidYes) {
        this.surroundings = surroundings;
        this.saidYes = saidYes;
        this.agreement = new Agreement(surroundings.folders());
    }

    /**
     * Returns if there is a yes to all that applies.
     *
     * @param leaves whether a signal will leave the machine; a rehearsal without a person is let through
     * @throws Refused where nobody can be asked
     * @throws Refused   after a no
     */
    void ask(Pattern pattern, boolean leaves) {
        List<Hazard> open = agreement.open(Cautions.of(Optional.of(pattern)));
        if (saidYes || open.isEmpty()) {
            return;
        }
        String read = "'understudy cautions " + pattern.id() + "'";
        if (!surroundings.terminal()) {
            if (leaves) {
                throw new Refused("the cautions have not been read and agreed to", "read them with " + read
                        + ", then add --yes, or play once in a terminal and say yes there");
            }
            surroundings.out().println("before a signal leaves this machine, read " + read);
            return;
        }
        surroundings.out().println();
        surroundings.out().println("Read this first.");
        Cautions.ownText(pattern).forEach(surroundings.out()::println);
        Cautions.text(open).forEach(surroundings.out()::println);
        surroundings.out().println();
        surroundings.out().print("Have you read this, and will you work by it? Type yes to go on: ");
        surroundings.out().flush();
        if (!answerIsYes()) {
            throw Refused.setup("", "nothing was played", "");
        }
        keep(open);
    }

    private boolean answerIsYes() {
        try {
            String answer = surroundings.in().readLine();
            return answer != null && List.of("yes", "y").contains(answer.strip().toLowerCase(Locale.ROOT));
        } catch (IOException e) {
            return false;
        }
    }

    private void keep(List<Hazard> hazards) {
        try {
            agreement.keep(hazards, LocalDate.now(surroundings.clock()));
        } catch (IOException e) {
            surroundings.err().println("your yes could not be kept in " + agreement.file() + ", so you will be asked again");
        }
    }
}
