package understudy.cli;

/** The input was fine, yet it could not be done (a full disk, a device that went away); the message says what to do. Exit code 1. */
final class Failed extends RuntimeException {

    Failed(String message, Throwable cause) {
        super(message, cause);
    }

    Failed(String message) {
        this(message, null);
    }
}
