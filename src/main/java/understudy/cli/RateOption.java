package understudy.cli;

/** A sample rate, which is often told as a bare number. */
final class RateOption {

    private RateOption() {}

    static String withUnit(String written) {
        return written != null && written.strip().matches("[0-9]+") ? written.strip() + " Hz" : written;
    }
}
