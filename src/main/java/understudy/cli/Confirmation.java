package understudy.cli;

import java.io.IOException;
import java.io.PrintWriter;
import understudy.refusal.Refused;
import understudy.text.Paragraph;

/** Questions to the person at the bench, and the answers. */
final class Confirmation {

    private final Surroundings surroundings;
    private final PrintWriter talk;

    Confirmation(Surroundings surroundings, PrintWriter talk) {
        this.surroundings = surroundings;
        this.talk = talk;
    }

    /** Says what must hold, and waits for Enter; {@code yes} answers for scripts. */
    void await(String demand, boolean yes) {
        Paragraph.lines(demand).forEach(talk::println);
        if (yes) {
            return;
        }
        if (!surroundings.terminal()) {
            throw new Refused("nobody can be asked whether nothing else is connected", "see to it, then add --yes");
        }
        answer("Press Enter when that is so: ");
    }

    /** The line that somebody types; an end of input ends the command. */
    String answer(String question) {
        talk.print(question);
        talk.flush();
        try {
            String line = surroundings.in().readLine();
            if (line == null) {
                talk.println();
                throw Refused.setup("no answer came", "no calibration was kept");
            }
            return line.strip();
        } catch (IOException e) {
            throw Refused.setup("the answer could not be read: " + e.getMessage(), "no calibration was kept", e);
        }
    }
}
