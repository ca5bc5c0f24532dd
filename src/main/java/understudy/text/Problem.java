package understudy.text;

/**
 * One thing that is wrong in what a person wrote.
 *
 * @param file   as the person named it
 * @param line   counted from 1
 * @param column counted from 1, in characters
 * @param wrong  what is wrong
 * @param right  what would be right
 */
public record Problem(String file, int line, int column, String wrong, String right) {

    /** {@code file:line:column: what is wrong; what would be right}, which editors and terminals can jump to. */
    @Override
    public String toString() {
        return file + ":" + line + ":" + column + ": " + wrong + "; " + right;
    }
}
