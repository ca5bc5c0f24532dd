package understudy.guide;

import java.util.List;
import java.util.Optional;
import understudy.refusal.Refused;
import understudy.text.Nearest;

/** The pages that travel inside the jar, since a workshop may be offline. */
public final class Guide {

    /** In the order in which they are best read. */
    private static final List<String> NAMES = List.of(
            "before", "reach", "input", "box", "wiring", "grounds", "audio", "calibrate", "preflight", "reading", "hunt", "walk", "sweep", "teach");

    private Guide() {}

    /** All of them, in reading order. */
    public static List<Page> pages() {
        return NAMES.stream().map(Guide::read).toList();
    }

    public static List<String> names() {
        return NAMES;
    }

    public static Optional<Page> find(String name) {
        return NAMES.contains(name) ? Optional.of(read(name)) : Optional.empty();
    }

    /** The page to read after this one. */
    public static Optional<String> after(Page page) {
        int next = NAMES.indexOf(page.name()) + 1;
        return next < NAMES.size() ? Optional.of(NAMES.get(next)) : Optional.empty();
    }

    private static Page read(String name) {
        return new Page(name, Inserts.into(Resource.text(name + ".md")));
    }

    /** @throws Refused when there is none of that name, with those that come near */
    public static Page page(String name) {
        return find(name).orElseThrow(() -> {
            List<String> near = Nearest.to(name, names());
            return new Refused("there is no page \"" + name + "\" in the guide", near.isEmpty() ? "the pages are " + String.join(", ", names())
                    : "did you mean " + String.join(" or ", near.subList(0, Math.min(2, near.size()))) + "?");
        });
    }
}
