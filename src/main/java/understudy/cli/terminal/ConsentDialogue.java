package understudy.cli.terminal;

import java.io.IOException;
import java.time.LocalDate;
import understudy.bench.Agreement;
import understudy.bench.Clearance;
import understudy.bench.Consent;
import understudy.bench.SignalPlan;
import understudy.pattern.Pattern;
import understudy.question.Question;
import understudy.refusal.Deed;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;
import understudy.view.CautionText;

/** Shows the cautions that nobody has agreed to yet, and asks. */
public final class ConsentDialogue {

    private final Surroundings surroundings;
    private final boolean saidYes;

    /** @param saidYes the command line says yes, for this time */
    public ConsentDialogue(Surroundings surroundings, boolean saidYes) {
        this.surroundings = surroundings;
        this.saidYes = saidYes;
    }

    /**
     * Returns with a yes to all that applies.
     *
     * @param leaves whether a signal will leave the machine; a rehearsal without a person is let through
     * @throws Refused where nobody can be asked, or after a no
     */
    public Clearance ask(SignalPlan plan, boolean leaves) {
        Consent consent = Consent.of(plan, leaves, new Agreement(surroundings.folders().settings()));
        if (consent.toRead().isEmpty()) {
            return consent.clearance();
        } else if (saidYes) {
            return consent.agreedForNow();
        }
        Pattern pattern = plan.pattern();
        if (!surroundings.terminal()) {
            return unasked(pattern, leaves);
        }
        surroundings.out().println();
        surroundings.out().println("Read this first.");
        CautionText.ownText(pattern).forEach(surroundings.out()::println);
        CautionText.text(consent.toRead()).forEach(surroundings.out()::println);
        surroundings.out().println();
        if (!new Person(surroundings, surroundings.out(), "nothing was played").ask(Question.yesNo(
                "Have you read this, and will you work by it? Type yes to go on:", "Each of these has hurt people or modules.",
                "it plays, and you are not asked again", "nothing is played"), "answer")) {
            throw Refused.setup("nothing was played", "");
        }
        keep(consent, surroundings);
        return consent.agreedForNow();
    }

    private Clearance unasked(Pattern pattern, boolean leaves) {
        Remedy read = Remedy.of("read them: ").perform(Deed.READ_CAUTIONS, pattern.id());
        if (leaves) {
            throw new Refused("the cautions have not been read and agreed to",
                    read.then(", then add --yes, or play once in a terminal and say yes there"));
        }
        surroundings.out().println("before a signal leaves this machine, "
                + CommandWords.text(Remedy.of("read ").perform(Deed.READ_CAUTIONS, pattern.id())));
        return Clearance.rehearsal();
    }

    /** Keeps a person's yes, so that it need not be given again. */
    public static void keep(Consent consent, Surroundings surroundings) {
        try {
            consent.keep(LocalDate.now(surroundings.clock()));
        } catch (IOException e) {
            surroundings.err().println("your yes could not be kept in "
                    + new Agreement(surroundings.folders().settings()).file() + ", so you will be asked again");
        }
    }
}
