package understudy.cli.terminal;

/** What the process ends with. */
public final class ExitCode {

    /** Fine, also after the user's own stop. */
    public static final int FINE = 0;
    public static final int FAILED = 1;
    /** Bad input, with nothing done. */
    public static final int BAD_INPUT = 2;

    private ExitCode() {}
}
