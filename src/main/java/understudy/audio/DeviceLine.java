package understudy.audio;

import javax.sound.sampled.SourceDataLine;

/** A line of javax.sound as the writer sees it: no controls, no drain, counts in frames. */
final class DeviceLine implements OutputLine {

    private final SourceDataLine line;
    private final int frameBytes;
    private final int capacityFrames;

    /** @param line open and not started */
    DeviceLine(SourceDataLine line) {
        this.line = line;
        this.frameBytes = line.getFormat().getFrameSize();
        this.capacityFrames = line.getBufferSize() / frameBytes;
    }

    @Override
    public int capacityFrames() {
        return capacityFrames;
    }

    @Override
    public int queuedFrames() {
        return capacityFrames - line.available() / frameBytes;
    }

    @Override
    public int write(byte[] bytes, int offset, int length) {
        return line.write(bytes, offset, length);
    }

    @Override
    public void start() {
        line.start();
    }

    @Override
    public void stop() {
        line.stop();
    }

    @Override
    public void flush() {
        line.flush();
    }

    @Override
    public void close() {
        line.close();
    }
}
