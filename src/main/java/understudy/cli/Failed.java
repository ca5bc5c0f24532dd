package understudy.cli;

import understudy.audio.AudioException;

/** The input was fine, yet it could not be done (a full disk, a device that went away); the message says what to do. Exit code 1. */
final class Failed extends RuntimeException {

    Failed(String message, Throwable cause) {
        super(message, cause);
    }

    Failed(String message) {
        this(message, null);
    }

    /** What a refusal of the audio room means here: bad input, or a set-up that has to be mended. */
    static RuntimeException because(AudioException e) {
        return e.remedy() == AudioException.Remedy.MEND_INPUT
                ? new BadInput(e.getMessage())
                : new Failed(e.getMessage(), e);
    }
}
