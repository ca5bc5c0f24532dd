package understudy.sweep;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The widest run of neighbouring speeds at which everything that was read is right.
 *
 * @param fromHz   turns a second, lowest
 * @param toHz     highest
 * @param readings within it
 * @param below    the nearest lower speed with a reading that is not right
 * @param above    the nearest higher one
 * @param outside  right readings beyond those two
 */
public record SweepRange(double fromHz, double toHz, int readings, Optional<SweepRow> below, Optional<SweepRow> above, int outside) {

    /** Empty where nothing is right. Rows that were skipped, or can't tell, neither make nor break a run. */
    public static Optional<SweepRange> of(List<SweepRow> rows) {
        SortedMap<Double, List<SweepRow>> bySpeed = new TreeMap<>();
        rows.stream().filter(SweepRow::tells).forEach(row -> bySpeed.computeIfAbsent(row.speedHz(), hz -> new ArrayList<>()).add(row));
        List<List<SweepRow>> speeds = List.copyOf(bySpeed.values());
        Optional<SweepRange> widest = Optional.empty();
        int first = 0;
        for (int end = 0; end <= speeds.size(); end++) {
            if (end == speeds.size() || wrong(speeds.get(end)).isPresent()) {
                if (end > first) {
                    SweepRange run = run(speeds, first, end);
                    widest = widest.filter(other -> other.span() >= run.span()).or(() -> Optional.of(run));
                }
                first = end + 1;
            }
        }
        return widest;
    }

    private static SweepRange run(List<List<SweepRow>> speeds, int first, int end) {
        int readings = speeds.subList(first, end).stream().mapToInt(List::size).sum();
        int right = (int) speeds.stream().flatMap(List::stream).filter(SweepRow::right).count();
        return new SweepRange(speeds.get(first).get(0).speedHz(), speeds.get(end - 1).get(0).speedHz(), readings,
                first == 0 ? Optional.empty() : wrong(speeds.get(first - 1)),
                end == speeds.size() ? Optional.empty() : wrong(speeds.get(end)), right - readings);
    }

    private static Optional<SweepRow> wrong(List<SweepRow> atOneSpeed) {
        return atOneSpeed.stream().filter(row -> !row.right()).findFirst();
    }

    private double span() {
        return toHz - fromHz;
    }

    /** Of all that was read, in one sentence or more. */
    public static String words(List<SweepRow> rows, SweptCircuit swept) {
        if (rows.stream().noneMatch(SweepRow::tells)) {
            return "Nothing was read that shows whether the module reads right.";
        }
        return of(rows).map(range -> range.words(swept)).orElse("The module reads right at none of these speeds.");
    }

    private String words(SweptCircuit swept) {
        boolean everywhere = below.isEmpty() && above.isEmpty();
        String where = fromHz == toHz ? "at " + swept.words(fromHz) + (everywhere ? ", the one speed that was read" : " only")
                : "from " + swept.words(fromHz) + ", to " + swept.words(toHz) + (everywhere ? ": at every speed that was read" : "");
        return "The module reads right " + where + " (" + readings + (readings == 1 ? " reading)." : " readings).")
                + below.map(row -> " Below, at " + swept.words(row.speedHz()) + ", the verdict is: " + row.verdict() + ".").orElse("")
                + above.map(row -> " Above, at " + swept.words(row.speedHz()) + ", the verdict is: " + row.verdict() + ".").orElse("")
                + (outside == 0 ? "" : " Elsewhere " + outside + (outside == 1 ? " reading is" : " readings are") + " right, too.");
    }
}
