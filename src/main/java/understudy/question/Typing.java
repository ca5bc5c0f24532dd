package understudy.question;

import java.util.Locale;

/** What people type, made plain. */
final class Typing {

    private Typing() {}

    /** In small letters, one blank between words, none at the ends. */
    static String plain(String typed) {
        return typed.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
    }
}
