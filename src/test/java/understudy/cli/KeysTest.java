package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.jline.utils.NonBlocking;
import org.junit.jupiter.api.Test;
import understudy.cli.terminal.Keys;

class KeysTest {

    @Test
    void plainKeysAreTheirCharacters() throws IOException {
        assertThat(read("q+5 ")).containsExactly((int) 'q', (int) '+', (int) '5', (int) ' ');
    }

    @Test
    void arrowsComeInBothSpellingsOfTerminals() throws IOException {
        assertThat(read("\033[A\033[B\033[C\033[D")).containsExactly(Keys.UP, Keys.DOWN, Keys.RIGHT, Keys.LEFT);
        assertThat(read("\033OA\033OB\033OC\033OD")).containsExactly(Keys.UP, Keys.DOWN, Keys.RIGHT, Keys.LEFT);
    }

    @Test
    void otherSequencesAreSwallowedWhole() throws IOException {
        // F5, an arrow held with control, and the escape key by itself: no digit of theirs may switch a fault
        assertThat(read("\033[15~\033[1;5Ax")).containsExactly(Keys.NONE, Keys.NONE, (int) 'x');
        assertThat(read("\033")).containsExactly(Keys.NONE);
    }

    private static List<Integer> read(String typed) throws IOException {
        Keys keys = new Keys(NonBlocking.nonBlocking(
                "keys", new ByteArrayInputStream(typed.getBytes(StandardCharsets.US_ASCII)), StandardCharsets.US_ASCII));
        List<Integer> seen = new ArrayList<>();
        for (int key = keys.read(1000); key != Keys.END_OF_INPUT; key = keys.read(1000)) {
            seen.add(key);
        }
        return seen;
    }
}
