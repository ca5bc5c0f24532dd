package understudy.question;

import java.util.Locale;
import java.util.regex.Pattern;

/** What people type, made plain. */
final class Typing {

    /** A number without its unit; a decimal comma is a matter of whoever reads numbers. */
    private static final Pattern BARE_NUMBER = Pattern.compile("[-+\u2212]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)");

    private Typing() {}

    /** In small letters, one blank between words, none at the ends. */
    static String plain(String typed) {
        return typed.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
    }

    static boolean bareNumber(String typed) {
        return BARE_NUMBER.matcher(typed).matches();
    }
}
