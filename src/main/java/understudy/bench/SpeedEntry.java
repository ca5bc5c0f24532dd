package understudy.bench;

import java.util.Optional;
import understudy.refusal.Refused;

/** A speed that is typed while the signal plays: opened by a key, taken by Enter, left by Enter with nothing typed. */
public final class SpeedEntry {

    private static final int BACKSPACE = 8;
    private static final int DELETE = 127;
    private static final int MOST_CHARACTERS = 30;

    private final LiveHand hand;
    private final String unit;
    private Optional<StringBuilder> typed = Optional.empty();
    private String refused = "";

    /** @param unit of a number alone */
    public SpeedEntry(LiveHand hand, String unit) {
        this.hand = hand;
        this.unit = unit;
    }

    public void open() {
        typed = Optional.of(new StringBuilder());
        refused = "";
    }

    /** Whether keys belong to the speed. */
    public boolean isOpen() {
        return typed.isPresent();
    }

    public void press(int key) {
        StringBuilder text = typed.orElseThrow();
        if (key == '\r' || key == '\n') {
            typed = Optional.empty();
            take(text.toString().strip());
        } else if (key == BACKSPACE || key == DELETE) {
            text.setLength(Math.max(0, text.length() - 1));
        } else if (key >= ' ' && key < DELETE && text.length() < MOST_CHARACTERS) {
            text.append((char) key);
        }
    }

    private void take(String text) {
        if (text.isEmpty()) {
            return;
        }
        try {
            hand.speed(text);
        } catch (Refused e) {
            refused = e.wrong() + "; " + e.right();
        }
    }

    /** What is typed so far, or why it was refused; empty when there is neither. */
    public Optional<String> line() {
        return typed.map(text -> "speed in " + unit + ", then Enter: " + text)
                .or(() -> Optional.of(refused).filter(reason -> !reason.isEmpty()));
    }

    /** A refusal has been read once another key is pressed. */
    public void forgetRefusal() {
        refused = "";
    }
}
