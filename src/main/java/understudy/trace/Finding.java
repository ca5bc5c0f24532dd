package understudy.trace;

import java.util.List;
import java.util.stream.Collectors;

/**
 * What the evidence says.
 *
 * @param suspects    the likeliest one; several when no point where one can inject lies between them
 * @param probability that the fault is with these
 * @param decided     whether that reaches the confidence that the circuit asks for
 */
public record Finding(List<Suspect> suspects, double probability, boolean decided) {

    public Finding {
        suspects = List.copyOf(suspects);
    }

    /** Whether it is this and nothing else. */
    public boolean is(Suspect.Side side) {
        return suspects.size() == 1 && suspects.get(0).side() == side;
    }

    /** Whether the module is among them. */
    public boolean touches(Suspect.Side side) {
        return suspects.stream().anyMatch(suspect -> suspect.side() == side);
    }

    /** To be put into a sentence. */
    public String names() {
        return suspects.stream().map(Suspect::name).collect(Collectors.joining(" or "));
    }
}
