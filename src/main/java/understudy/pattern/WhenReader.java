package understudy.pattern;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.nodes.Node;
import understudy.refusal.Refused;
import understudy.text.Problems;
import understudy.text.Values;

/** Reads when a fault acts: "from 2 s until 5 s, every 3 turns, 10 % of turns". */
final class WhenReader {
    private static final Pattern SPAN = Pattern.compile("(?:from\\s+(?<from>.+?))?(?:(?:^|\\s+)until\\s+(?<until>.+))?");
    private static final Pattern EVERY = Pattern.compile("every\\s+(\\d{1,7})\\s+turns?");
    private static final Pattern CHANCE = Pattern.compile("(.*%)\\s*of turns");
    private static final String RIGHT = "write parts like these, joined by commas: always, from 2 s, until 5 s, "
            + "from 2 s until 5 s, every 3 turns, 10 % of turns";

    private final Problems problems;
    private double fromSeconds;
    private double untilSeconds = Double.POSITIVE_INFINITY;
    private int everyTurns = 1;
    private double chance = 1;

    WhenReader(Problems problems) {
        this.problems = problems;
    }

    Optional<When> read(Node node) {
        int before = problems.count();
        new Values(problems).quantity(node, "when it acts, like \"from 2 s\"", written -> {
            parts(written);
            return 0;
        });
        if (problems.count() > before) {
            return Optional.empty();
        }
        return Optional.of(new When(fromSeconds, untilSeconds, everyTurns, chance));
    }

    private void parts(String written) {
        boolean[] said = new boolean[3];
        for (String piece : written.split(",", -1)) {
            String part = piece.strip();
            Matcher every = EVERY.matcher(part);
            Matcher ofTurns = CHANCE.matcher(part);
            Matcher span = SPAN.matcher(part);
            int kind;
            if (part.equals("always")) {
                kind = 0;
            } else if (every.matches()) {
                kind = 1;
                everyTurns = Integer.parseInt(every.group(1));
            } else if (ofTurns.matches()) {
                kind = 2;
                chance = FormatLimits.CHANCE.parse(ofTurns.group(1)) / 100;
            } else if (!part.isEmpty() && span.matches()) {
                kind = 0;
                fromSeconds = span.group("from") == null ? 0 : FormatLimits.MOMENT.parse(span.group("from"));
                untilSeconds = span.group("until") == null
                        ? Double.POSITIVE_INFINITY : FormatLimits.MOMENT.parse(span.group("until"));
            } else {
                throw new Refused("\"" + part + "\" does not say when", RIGHT);
            }
            if (said[kind]) {
                throw new Refused("\"" + written + "\" says twice when it acts", "keep one part of a kind");
            }
            said[kind] = true;
        }
        if (fromSeconds >= untilSeconds) {
            throw new Refused("\"" + written + "\" ends before it begins", "write the earlier time after \"from\"");
        }
        if (everyTurns < 1) {
            throw new Refused("\"every 0 turns\" is never", "write 1 or more");
        }
    }
}
