package understudy.cli;

import java.util.List;
import understudy.hunt.Remark;
import understudy.text.Paragraph;
import understudy.trace.Entry;
import understudy.trace.EventWords;
import understudy.trace.Hunt;
import understudy.trace.Numbered;

/** What a hunt shows before it asks, as lines of a terminal. */
final class HuntRemarks {

    private final Hunt hunt;
    private final TraceTalk talk;

    HuntRemarks(Hunt hunt, TraceTalk talk) {
        this.hunt = hunt;
        this.talk = talk;
    }

    void show(List<Remark> remarks) {
        remarks.forEach(this::show);
    }

    private void show(Remark remark) {
        if (remark instanceof Remark.Gap) {
            talk.gap();
        } else if (remark instanceof Remark.Sentence sentence) {
            talk.say(sentence.text());
        } else if (remark instanceof Remark.Item item) {
            talk.lines(Paragraph.lines("  - ", "    ", item.text()));
        } else if (remark instanceof Remark.Choice choice) {
            talk.lines(Paragraph.lines("  " + choice.number() + "  ", "     ", choice.text()));
        } else if (remark instanceof Remark.OwnCautions) {
            talk.lines(TraceText.ownCautions(hunt));
        } else if (remark instanceof Remark.Caution caution) {
            talk.lines(Cautions.text(List.of(caution.hazard())));
        } else if (remark instanceof Remark.Evidence) {
            evidence();
        } else if (remark instanceof Remark.Suspects) {
            talk.lines(new TraceText(hunt).suspects());
        } else if (remark instanceof Remark.Standing) {
            talk.lines(new TraceText(hunt).where());
        } else if (remark instanceof Remark.Contradiction contradiction) {
            new TraceText(hunt).clash(contradiction.number()).ifPresent(talk::say);
        }
    }

    private void evidence() {
        for (Numbered event : hunt.standing()) {
            boolean counts = event.entry() instanceof Entry.Injected injected && !injected.place().onReference()
                    || event.entry() instanceof Entry.Proven;
            if (counts) {
                talk.lines(Paragraph.lines("  step " + event.number() + ", ", "    ", EventWords.step(hunt, event)));
            }
        }
    }
}
