package understudy.wave;

/**
 * Fills blocks with volts at the module's pins: the one contract that device, file and test drive alike.
 *
 * <p>Time is a count of frames, never the clock. After construction {@link #render} MUST NOT allocate, lock, block,
 * log, format or read a clock; it MAY read one volatile reference.
 */
public interface VoltSource {

    int channels();

    int rateHz();

    /**
     * Fills {@code volts[channel][0 .. frames)} with what comes next. The cut into blocks leaves no trace: the same
     * samples come in blocks of any size.
     *
     * @param volts  one array a channel, each at least {@code frames} long
     * @param frames 0 or more
     */
    void render(double[][] volts, int frames);
}
