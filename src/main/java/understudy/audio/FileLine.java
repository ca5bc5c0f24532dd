package understudy.audio;

import java.util.Optional;
import understudy.refusal.Refused;

/** A line into a WAV file, at the pace of a silent one; the file appears when the line is closed. */
final class FileLine implements OutputLine {

    private final SilentLine pace;
    private final WavWriter file;
    private volatile String failure;

    FileLine(SilentLine pace, WavWriter file) {
        this.pace = pace;
        this.file = file;
    }

    @Override
    public int capacityFrames() {
        return pace.capacityFrames();
    }

    @Override
    public int queuedFrames() {
        return pace.queuedFrames();
    }

    @Override
    public synchronized int write(byte[] bytes, int offset, int length) {
        if (failure != null) {
            return 0;
        }
        int taken = pace.write(bytes, offset, length);
        try {
            file.write(bytes, offset, taken);
            return taken;
        } catch (Refused e) {
            failure = e.getMessage();
            return 0;
        }
    }

    @Override
    public void start() {
        pace.start();
    }

    @Override
    public void stop() {
        pace.stop();
    }

    @Override
    public void flush() {
        pace.flush();
    }

    @Override
    public synchronized void close() {
        pace.close();
        try {
            if (failure == null) {
                file.commit();
            }
        } catch (Refused e) {
            failure = e.getMessage();
        } finally {
            file.close();
        }
    }

    @Override
    public Optional<String> failure() {
        return Optional.ofNullable(failure);
    }
}
