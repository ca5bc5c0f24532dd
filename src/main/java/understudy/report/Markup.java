package understudy.report;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.UnaryOperator;

/** Writes XHTML and SVG, well-formed both as XML and as HTML. Whatever is text or a value is escaped; nothing else can be put in. */
final class Markup {

    /** What XML can't hold (control characters, halves of pairs), and what turns the direction of the text around it. */
    private static final String UNFIT = "[^\\t\\n\\x20-\\x{D7FF}\\x{E000}-\\x{FFFD}\\x{10000}-\\x{10FFFF}]|[\\x7F-\\x9F]"
            + "|[\\u202A-\\u202E\\u2066-\\u2069]";

    private final StringBuilder out = new StringBuilder();
    private final Deque<String> open = new ArrayDeque<>();
    private final UnaryOperator<String> letters;

    /** @param letters what is to become of texts that not every font can show */
    Markup(UnaryOperator<String> letters) {
        this.letters = letters;
    }

    /** @param attributes names and values by turns */
    Markup open(String tag, Object... attributes) {
        tag(tag, attributes);
        out.append('>');
        open.push(tag);
        return this;
    }

    Markup close() {
        out.append("</").append(open.pop()).append(">");
        return this;
    }

    /** An element with nothing in it that HTML knows as such, like meta, or any of SVG's. */
    Markup empty(String tag, Object... attributes) {
        tag(tag, attributes);
        out.append("/>");
        return this;
    }

    Markup text(String words) {
        out.append(escaped(letters.apply(fit(words))));
        return this;
    }

    /** An element that holds a text. */
    Markup leaf(String tag, String words, Object... attributes) {
        return open(tag, attributes).text(words).close();
    }

    /** What another of this kind wrote. */
    Markup add(String markup) {
        out.append(markup);
        return this;
    }

    private void tag(String tag, Object... attributes) {
        out.append('<').append(tag);
        for (int i = 0; i < attributes.length; i += 2) {
            out.append(' ').append(attributes[i]).append("=\"").append(escaped(String.valueOf(attributes[i + 1]))).append('"');
        }
    }

    private static String fit(String words) {
        return words.replaceAll(UNFIT, "\uFFFD");
    }

    private static String escaped(String words) {
        return fit(words).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
