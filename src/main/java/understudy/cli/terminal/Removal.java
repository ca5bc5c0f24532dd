package understudy.cli.terminal;

import java.util.Optional;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.refusal.Refused;

/**
 * The yes that removing something for good takes: its name, spelled out.
 *
 * @param command that removes it
 * @param kind what it is: rig, job
 * @param name of the one
 * @param all  what goes with it, in words
 */
public record Removal(String command, String kind, String name, String all) {

    /**
     * Returns when somebody agreed.
     *
     * @param yes as given on the command line, if it was
     */
    public void agree(String yes, Surroundings surroundings) {
        String option = "--yes " + (name.contains(" ") ? "\"" + name + "\"" : name);
        if (yes != null && !yes.equalsIgnoreCase(name)) {
            throw new Refused("--yes: \"" + yes + "\" is not this " + kind + "'s name", "write " + option + " to remove it for good");
        } else if (yes != null) {
            return;
        } else if (!surroundings.terminal()) {
            throw new Refused(command + ": nobody is there to be asked", "write " + option + " to remove it for good");
        }
        String typed = new Person(surroundings, surroundings.out(), "nothing was removed").ask(new Question<>(
                "This removes " + all + " for good. Type its name to go on:", "What is removed can't be brought back.",
                new Answers.Words(false, "its name removes it; anything else leaves it"), Optional.empty()), kind);
        if (!typed.equalsIgnoreCase(name)) {
            throw Refused.setup("nothing was removed", "");
        }
    }
}
