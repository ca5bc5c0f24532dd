package understudy.audio;

import java.io.IOException;

/** A device or a sound file could not be used. The message says where, what was found, and what to do about it. */
public final class AudioException extends IOException {

    /** Who can mend it. */
    public enum Remedy {
        /** What was asked for cannot be: another name, number or file is needed. */
        MEND_INPUT,
        /** The machine has to be put right: a full disk, a busy device, a missing permission. */
        MEND_SETUP
    }

    private final Remedy remedy;

    private AudioException(Remedy remedy, String message, Throwable cause) {
        super(message, cause);
        this.remedy = remedy;
    }

    public Remedy remedy() {
        return remedy;
    }

    static AudioException input(String message) {
        return new AudioException(Remedy.MEND_INPUT, message, null);
    }

    static AudioException setup(String message) {
        return new AudioException(Remedy.MEND_SETUP, message, null);
    }

    static AudioException setup(String message, Throwable cause) {
        return new AudioException(Remedy.MEND_SETUP, message, cause);
    }
}
