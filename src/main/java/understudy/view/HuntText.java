package understudy.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import understudy.reading.Injected;
import understudy.text.Paragraph;
import understudy.trace.Circuit;
import understudy.trace.Clash;
import understudy.trace.Entry;
import understudy.trace.EventWords;
import understudy.trace.Hunt;
import understudy.trace.Numbered;
import understudy.trace.Place;
import understudy.trace.Point;
import understudy.trace.Suspect;

/** How a hunt stands, as a person reads it. */
public final class HuntText {

    private static final int BAR = 20;
    /** Suspects below this are summed up. */
    private static final double HARDLY = 0.01;

    private final Hunt hunt;

    public HuntText(Hunt hunt) {
        this.hunt = hunt;
    }

    /** The circuit from sensor to module, with what was read at each point and the odds of what lies between. */
    public List<String> circuit() {
        Circuit circuit = hunt.circuit();
        List<Suspect> suspects = circuit.suspects();
        List<String> lines = new ArrayList<>();
        for (Suspect suspect : suspects) {
            String share = EventWords.percent(hunt.odds().probability(suspect.index()));
            lines.addAll(Paragraph.lines("   |  " + " ".repeat(Math.max(0, 6 - share.length())) + share + "  ", "   |          ",
                    suspect.name()));
            if (suspect.index() < circuit.points().size()) {
                Point point = circuit.points().get(suspect.index());
                String read = read(new Place(false, suspect.index()));
                String how = point.injectable() ? EventWords.minutes(point.reachMinutes()) : "nobody can inject there";
                lines.addAll(Paragraph.lines(String.format(Locale.ROOT, "%3d  ", suspect.index() + 1), "     ",
                        point.name() + ", " + (read.isEmpty() ? how : read)));
            }
        }
        return lines;
    }

    /** "good (step 4), bad (step 9)". */
    private String read(Place place) {
        return hunt.standing().stream()
                .filter(event -> event.entry() instanceof Entry.Injected injected && injected.place().equals(place))
                .map(event -> EventWords.verdict((Entry.Injected) event.entry()) + " (step " + event.number() + ")")
                .collect(Collectors.joining(", "));
    }

    /** Those that may still be it, each with a bar. */
    public List<String> suspects() {
        List<String> lines = new ArrayList<>();
        double rest = 0;
        int hardly = 0;
        for (Suspect suspect : hunt.circuit().suspects()) {
            double probability = hunt.odds().probability(suspect.index());
            if (probability < HARDLY) {
                rest += probability;
                hardly++;
            } else {
                lines.addAll(suspect(probability, suspect.name()));
            }
        }
        if (hardly > 0) {
            lines.addAll(suspect(rest, hardly == 1 ? "the other one" : "the other " + hardly + " together"));
        }
        return lines;
    }

    private static List<String> suspect(double probability, String name) {
        String bar = "=".repeat((int) Math.round(BAR * probability));
        String share = EventWords.percent(probability);
        return Paragraph.lines("  " + bar + ".".repeat(BAR - bar.length()) + " ".repeat(Math.max(0, 7 - share.length())) + share
                + "  ", " ".repeat(BAR + 11), name);
    }

    /** What a step contradicts, with what to do; empty when it contradicts nothing. */
    public Optional<String> clash(int number) {
        List<String> others = hunt.clashes().stream().filter(clash -> clash.goodNumber() == number || clash.badNumber() == number)
                .map(clash -> clash.goodNumber() == number
                        ? named(clash.badNumber(), "bad") : named(clash.goodNumber(), "good")).toList();
        boolean good = hunt.clashes().stream().anyMatch(clash -> clash.goodNumber() == number);
        return others.isEmpty() ? Optional.empty() : Optional.of("Step " + named(number, good ? "good" : "bad")
                + " contradicts step " + String.join(" and step ", others) + ": with one fault, what is good from one point on is"
                + " good from every point nearer to the module. A reading may be wrong, or there are two faults. Withdraw what you"
                + " doubt (like: withdraw " + number + "), and read there again.");
    }

    /** All that contradicts each other, once. */
    public List<String> clashes() {
        return hunt.clashes().stream().map(Clash::badNumber).distinct().flatMap(bad -> clash(bad).stream())
                .flatMap(clash -> Paragraph.lines(clash).stream()).toList();
    }

    private String named(int number, String verdict) {
        return number + " (" + where(number) + ", " + verdict + ")";
    }

    private String where(int number) {
        return hunt.name(((Entry.Injected) hunt.events().get(number - 1).entry()).place());
    }

    /** Everything that happened, a paragraph each. */
    public List<String> steps() {
        List<String> lines = new ArrayList<>();
        for (Numbered event : hunt.events()) {
            lines.addAll(Paragraph.lines(String.format(Locale.ROOT, "%3d  ", event.number()), "     ",
                    (event.standing() ? "" : "(withdrawn) ") + EventWords.step(hunt, event)));
        }
        return lines;
    }

    /** Where it stands: circuit, suspects, steps. */
    public List<String> where() {
        List<String> lines = new ArrayList<>(List.of(""));
        lines.addAll(Paragraph.lines("Job \"" + hunt.job().name() + "\": " + hunt.circuit().title()));
        lines.add("");
        lines.addAll(circuit());
        if (!hunt.events().isEmpty()) {
            lines.add("");
            lines.add("Steps so far:");
            lines.addAll(steps());
        }
        lines.addAll(clashes());
        lines.add("");
        return lines;
    }

    /** CautionText in the patterns' own words. */
    public static List<String> ownCautions(Hunt hunt) {
        List<String> lines = new ArrayList<>(CautionText.ownText(hunt.subjects().suspect().pattern()));
        hunt.subjects().reference().ifPresent(reference -> lines.addAll(CautionText.ownText(reference.pattern())));
        return lines;
    }
}
