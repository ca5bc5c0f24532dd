package understudy.guide;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import understudy.pattern.Hazard;
import understudy.rig.OutOfReach;

/** What the program says elsewhere too, put into the pages where they name it, so that it is told in one way. */
final class Inserts {

    private static final List<Hazard> FIRST = List.of(Hazard.RULES, Hazard.ACTUATORS, Hazard.AIRBAGS, Hazard.ELECTRIC_DRIVE);

    private Inserts() {}

    static String into(String markdown) {
        return markdown
                .replace("{{cautions}}", cautions())
                .replace("{{out-of-reach}}", outOfReach());
    }

    /** What rules all else, then what is never to be touched, then the rest. */
    private static String cautions() {
        return Stream.concat(FIRST.stream(), Arrays.stream(Hazard.values()).filter(hazard -> !FIRST.contains(hazard)))
                .map(hazard -> "## " + hazard.title() + "\n\n" + hazard.whatCanHappen() + "\n\n**What to do:** "
                        + hazard.whatToDo() + "\n")
                .collect(Collectors.joining("\n"));
    }

    private static String outOfReach() {
        return Arrays.stream(OutOfReach.values())
                .map(kind -> "- **" + capital(kind.what()) + ":** " + kind.reason() + ".\n")
                .collect(Collectors.joining());
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
