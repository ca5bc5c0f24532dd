package understudy.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import understudy.quantity.Range;
import understudy.rig.Spread;

/**
 * A thing described in one option: what it is, then what is special about it, "pulled-up-5-v, pull-up: 2k2, low: 1.5 V".
 * Whoever reads it takes the details one by one; what nobody took is a problem.
 */
final class Description {

    private final String option;
    private final String what;
    private final Map<String, String> details = new LinkedHashMap<>();
    private final List<String> known = new ArrayList<>();
    private final Arguments given;

    private Description(String option, String what, Arguments given) {
        this.option = option;
        this.what = what;
        this.given = given;
    }

    static Description read(String option, String written, Arguments given) {
        String[] pieces = written.split(",");
        Description description = new Description(option, pieces[0].strip(), given);
        for (int i = 1; i < pieces.length; i++) {
            String[] detail = pieces[i].split(":", 2);
            if (detail.length < 2) {
                given.problem(option, "\"" + pieces[i].strip() + "\" has no colon in it", "write it like \"pull-up: 2.2 kohm\"");
            } else if (description.details.put(detail[0].strip(), detail[1].strip()) != null) {
                given.problem(option, "\"" + detail[0].strip() + "\" is there twice", "leave one of them out");
            }
        }
        return description;
    }

    String what() {
        return what;
    }

    private String take(String key) {
        known.add(key);
        return details.remove(key);
    }

    Optional<String> text(String key) {
        return Optional.ofNullable(take(key));
    }

    Spread part(String key, Range range, Spread otherwise) {
        return given.part(option, take(key), range, otherwise.tolerance()).orElse(otherwise);
    }

    Optional<Spread> part(String key, Range range, Optional<Spread> otherwise) {
        String written = take(key);
        return written == null ? otherwise : given.part(option, written, range, otherwise.map(Spread::tolerance).orElse(0.2));
    }

    double number(String key, Range range, double otherwise) {
        return given.quantity(option, take(key), range, otherwise);
    }

    /** After the last detail was taken. */
    void end() {
        for (String left : details.keySet()) {
            given.problem(option, what + " has no \"" + left + "\"", known.isEmpty() ? "leave it out"
                    : "it can have " + String.join(", ", known));
        }
    }
}
