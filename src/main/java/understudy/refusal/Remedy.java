package understudy.refusal;

import java.util.ArrayList;
import java.util.List;

/** What to do about it: a sentence that holds controls and deeds as values, so that each front end can offer them its own way. */
public record Remedy(List<Part> parts) {

    /** A piece of the sentence. */
    public sealed interface Part {}

    /** Plain words that suit every front end. */
    public record Words(String text) implements Part {}

    /** A control, and what to set it to; without a value the control alone is named. */
    public record Setting(Control control, String value) implements Part {}

    /** Something to do, and what to do it with; the subject may be empty. */
    public record Act(Deed deed, String subject) implements Part {}

    public Remedy {
        parts = List.copyOf(parts);
    }

    /** Plain words. */
    public static Remedy of(String words) {
        return new Remedy(words.isEmpty() ? List.of() : List.of(new Words(words)));
    }

    public Remedy then(String words) {
        return with(new Words(words));
    }

    /** Another sentence behind this one. */
    public Remedy then(Remedy other) {
        List<Part> more = new ArrayList<>(parts);
        more.addAll(other.parts);
        return new Remedy(more);
    }

    public Remedy set(Control control) {
        return set(control, "");
    }

    public Remedy set(Control control, String value) {
        return with(new Setting(control, value));
    }

    public Remedy perform(Deed deed, String subject) {
        return with(new Act(deed, subject));
    }

    private Remedy with(Part part) {
        List<Part> more = new ArrayList<>(parts);
        more.add(part);
        return new Remedy(more);
    }

    /** The sentence in a front end's words. */
    public String text(Wording wording) {
        StringBuilder text = new StringBuilder();
        for (Part part : parts) {
            if (part instanceof Words words) {
                text.append(words.text());
            } else if (part instanceof Setting setting) {
                text.append(wording.setting(setting.control(), setting.value()));
            } else if (part instanceof Act act) {
                text.append(wording.deed(act.deed(), act.subject()));
            }
        }
        return text.toString();
    }
}
