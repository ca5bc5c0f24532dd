package understudy.view;

import java.util.ArrayList;
import java.util.List;
import understudy.pattern.Hazard;
import understudy.pattern.Pattern;
import understudy.text.Paragraph;

/** The cautions as a person reads them. */
public final class CautionText {

    private CautionText() {}

    public static List<String> text(List<Hazard> hazards) {
        List<String> lines = new ArrayList<>();
        for (Hazard hazard : hazards) {
            lines.add("");
            lines.addAll(Paragraph.lines(hazard.title()));
            lines.addAll(Paragraph.lines("  What can happen: ", "  ", hazard.whatCanHappen()));
            lines.addAll(Paragraph.lines("  What to do: ", "  ", hazard.whatToDo()));
        }
        return lines;
    }

    /** The pattern's own, beyond its hazards. */
    public static List<String> ownText(Pattern pattern) {
        List<String> lines = new ArrayList<>();
        if (!pattern.cautions().isEmpty()) {
            lines.add("");
            lines.add("For this pattern");
            pattern.cautions().forEach(caution -> lines.addAll(Paragraph.lines("  ", "  ", caution)));
        }
        return lines;
    }
}
