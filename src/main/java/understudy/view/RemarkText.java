package understudy.view;

import java.util.ArrayList;
import java.util.List;
import understudy.hunt.Remark;
import understudy.reading.Injected;
import understudy.text.Paragraph;
import understudy.trace.Entry;
import understudy.trace.EventWords;
import understudy.trace.Hunt;
import understudy.trace.Numbered;

/** What a hunt shows before it asks, as lines. */
public final class RemarkText {

    private final Hunt hunt;

    public RemarkText(Hunt hunt) {
        this.hunt = hunt;
    }

    public List<String> lines(List<Remark> remarks) {
        return remarks.stream().flatMap(remark -> lines(remark).stream()).toList();
    }

    private List<String> lines(Remark remark) {
        if (remark instanceof Remark.Sentence sentence) {
            return Paragraph.lines(sentence.text());
        } else if (remark instanceof Remark.Item item) {
            return Paragraph.lines("  - ", "    ", item.text());
        } else if (remark instanceof Remark.Choice choice) {
            return Paragraph.lines("  " + choice.number() + "  ", "     ", choice.text());
        } else if (remark instanceof Remark.OwnCautions) {
            return HuntText.ownCautions(hunt);
        } else if (remark instanceof Remark.Caution caution) {
            return CautionText.text(List.of(caution.hazard()));
        } else if (remark instanceof Remark.Evidence) {
            return evidence();
        } else if (remark instanceof Remark.Suspects) {
            return new HuntText(hunt).suspects();
        } else if (remark instanceof Remark.Standing) {
            return new HuntText(hunt).where();
        } else if (remark instanceof Remark.Contradiction contradiction) {
            return new HuntText(hunt).clash(contradiction.number()).map(Paragraph::lines).orElse(List.of());
        }
        return List.of(""); // a gap
    }

    private List<String> evidence() {
        List<String> lines = new ArrayList<>();
        for (Numbered event : hunt.standing()) {
            boolean counts = event.entry() instanceof Entry.Injected injected && !injected.place().onReference()
                    || event.entry() instanceof Entry.Proven;
            if (counts) {
                lines.addAll(Paragraph.lines("  step " + event.number() + ", ", "    ", EventWords.step(hunt, event)));
            }
        }
        return lines;
    }
}
