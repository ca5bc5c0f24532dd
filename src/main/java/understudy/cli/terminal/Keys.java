package understudy.cli.terminal;

import java.io.IOException;
import org.jline.utils.NonBlockingReader;

/** Reads single keys; arrows arrive as sequences of characters (ECMA-48, cursor keys) and leave as one number. */
public final class Keys {

    public static final int NONE = -1;
    public static final int END_OF_INPUT = -2;
    // above every character there is
    public static final int UP = 0x110000;
    public static final int DOWN = 0x110001;
    public static final int RIGHT = 0x110002;
    public static final int LEFT = 0x110003;

    private static final int ESCAPE = 27;
    /** A terminal sends a whole sequence at once; even a slow line needs no longer between two of its characters. */
    private static final long SEQUENCE_MILLIS = 50;

    private final NonBlockingReader reader;
    private boolean ended;

    public Keys(NonBlockingReader reader) {
        this.reader = reader;
    }

    /** A character, one of the constants, or {@link #NONE} when no key that is known came in time. */
    public int read(long millis) throws IOException {
        int first = next(millis);
        if (ended) {
            return END_OF_INPUT;
        }
        if (first != ESCAPE) {
            return first == NonBlockingReader.READ_EXPIRED ? NONE : first;
        }
        int second = next(SEQUENCE_MILLIS);
        if (second != '[' && second != 'O') {
            return NONE;
        }
        int last = next(SEQUENCE_MILLIS);
        boolean plain = true;
        // parameters, as of an arrow with a shift key, or of a function key, belong to the sequence
        while (last >= '0' && last <= '?') {
            plain = false;
            last = next(SEQUENCE_MILLIS);
        }
        return plain && last >= 'A' && last <= 'D' ? UP + last - 'A' : NONE;
    }

    /** The reader tells of its end only once, be it in the middle of a sequence. */
    private int next(long millis) throws IOException {
        int read = ended ? NonBlockingReader.EOF : reader.read(millis);
        ended |= read == NonBlockingReader.EOF;
        return read;
    }
}
