package understudy.calibrate;

/** A calibration that can't be had from what was played or read: what was found, what is right, what to do. */
public final class CalibrationException extends RuntimeException {

    CalibrationException(String message) {
        super(message);
    }
}
