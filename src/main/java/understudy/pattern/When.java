package understudy.pattern;

/**
 * When a fault acts. Times count from the start of playing; turns are those of the fault's output.
 *
 * @param fromSeconds  0 or more
 * @param untilSeconds may be infinite
 * @param everyTurns   acts in one turn out of so many, the first included; 1 is every turn
 * @param chance       of acting in each such turn, above 0 to 1, drawn from the pattern's seed
 */
public record When(double fromSeconds, double untilSeconds, int everyTurns, double chance) {

    public static final When ALWAYS = new When(0, Double.POSITIVE_INFINITY, 1, 1);

    public When {
        if (!(fromSeconds >= 0 && fromSeconds < untilSeconds) || everyTurns < 1 || !(chance > 0 && chance <= 1)) {
            throw new IllegalArgumentException("a time span, a number of turns and a chance that can be, please");
        }
    }
}
