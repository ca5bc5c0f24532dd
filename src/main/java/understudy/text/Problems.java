package understudy.text;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntUnaryOperator;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.Node;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refused;

/** Collects the problems of one text; reading goes on after each, so that all come out in one pass. */
public final class Problems {
    private static final Comparator<Location.Line> LINES =
            Comparator.comparingInt(Location.Line::line).thenComparingInt(Location.Line::column);

    private final Location text;
    private final IntUnaryOperator columns;
    private final Set<Refusal> found = new LinkedHashSet<>(); // what an alias repeats is said once
    private int reported;

    public Problems(String file) {
        this(Location.named(file), column -> column);
    }

    /** @param columns from columns of the first line read to those of what was written, where one was made of the other */
    public Problems(Location text, IntUnaryOperator columns) {
        this.text = text;
        this.columns = columns;
    }

    public void add(Node node, String wrong, String right) {
        add(node.getStartMark(), wrong, right);
    }

    public void add(Node node, Refused e) {
        add(node, e.wrong(), e.right());
    }

    public void add(Optional<Mark> mark, String wrong, String right) {
        at(mark.map(m -> m.getLine() + 1).orElse(1), mark.map(m -> m.getColumn() + 1).orElse(1), wrong, right);
    }

    public void at(int line, int column, String wrong, String right) {
        int written = line == 1 ? Math.max(1, columns.applyAsInt(column)) : column;
        found.add(new Refusal(new Location.Line(text, line, written), wrong, right));
        reported++;
    }

    /** How often a problem was reported, repeats included: whether it has grown tells whether a stretch was clean. */
    public int count() {
        return reported;
    }

    public boolean isEmpty() {
        return found.isEmpty();
    }

    public List<Refusal> inOrder() {
        return found.stream()
                .sorted(Comparator.comparing(refusal -> (Location.Line) refusal.location(), LINES))
                .toList();
    }
}
