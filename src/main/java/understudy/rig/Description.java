package understudy.rig;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import understudy.quantity.Range;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refusals;

/**
 * A thing described in one text: what it is, then what is special about it, "pulled-up-5-v, pull-up: 2k2, low: 1.5 V".
 * Whoever reads it takes the details one by one; what nobody took is a problem.
 */
public final class Description {

    /** Of a part that is described without one. */
    private static final double USUAL_TOLERANCE = 0.2;

    private final Location location;
    private final String what;
    private final Map<String, String> details = new LinkedHashMap<>();
    private final List<String> known = new ArrayList<>();
    private final Refusals problems;

    private Description(Location location, String what, Refusals problems) {
        this.location = location;
        this.what = what;
        this.problems = problems;
    }

    /** @param location where the text was given, for the problems found in it */
    public static Description read(Location location, String written, Refusals problems) {
        String[] pieces = written.split(",(?![0-9])"); // a comma within a number is a decimal comma
        Description description = new Description(location, pieces[0].strip(), problems);
        for (int i = 1; i < pieces.length; i++) {
            String[] detail = pieces[i].split(":", 2);
            if (detail.length < 2) {
                description.refuse("\"" + pieces[i].strip() + "\" has no colon in it", "write it like \"pull-up: 2.2 kohm\"");
            } else if (description.details.put(detail[0].strip(), detail[1].strip()) != null) {
                description.refuse("\"" + detail[0].strip() + "\" is there twice", "leave one of them out");
            }
        }
        return description;
    }

    private void refuse(String wrong, String right) {
        problems.add(new Refusal(location, wrong, right));
    }

    public String what() {
        return what;
    }

    private String take(String key) {
        known.add(key);
        return details.remove(key);
    }

    public Optional<String> text(String key) {
        return Optional.ofNullable(take(key));
    }

    public Spread part(String key, Range range, Spread otherwise) {
        return part(take(key), range, otherwise.tolerance()).orElse(otherwise);
    }

    public Optional<Spread> part(String key, Range range, Optional<Spread> otherwise) {
        String written = take(key);
        return written == null ? otherwise : part(written, range, otherwise.map(Spread::tolerance).orElse(USUAL_TOLERANCE));
    }

    private Optional<Spread> part(String written, Range range, double tolerance) {
        return written == null ? Optional.empty()
                : problems.attempt(location, () -> Spread.parse(written, range, tolerance));
    }

    public double number(String key, Range range, double otherwise) {
        String written = take(key);
        return written == null ? otherwise : problems.attempt(location, () -> range.typed(written)).orElse(otherwise);
    }

    /** After the last detail was taken. */
    public void end() {
        for (String left : details.keySet()) {
            refuse(what + " has no \"" + left + "\"", known.isEmpty() ? "leave it out"
                    : "it can have " + String.join(", ", known));
        }
    }
}
