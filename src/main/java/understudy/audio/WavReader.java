package understudy.audio;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import understudy.refusal.Refused;

/**
 * Reads a WAV file in bounded memory: RIFF and RF64, 16, 24 and 32 bits and 32-bit float, any number of channels.
 * Samples come as fractions of full scale. Not thread safe.
 */
public final class WavReader implements Closeable {

    private static final int BLOCK_FRAMES = 4096;
    private static final long NOT_SAID = 0xFFFFFFFFL;

    private final Path path;
    private final FileChannel channel;
    private final long fileBytes;

    private int channels;
    private int rateHz;
    private SampleFormat format;
    private long dataStart = -1;
    private long dataBytes;
    private long frameAt;
    private ByteBuffer block;

    private WavReader(Path path, FileChannel channel) throws IOException {
        this.path = path;
        this.channel = channel;
        this.fileBytes = channel.size();
    }

    /** @throws Refused saying what is wrong with the file, and at which byte */
    public static WavReader open(Path path) {
        if (!Files.isRegularFile(path)) {
            throw new Refused(path + (Files.exists(path) ? ": is not a file" : ": there is no such file"), "");
        }
        FileChannel channel = null;
        boolean good = false;
        try {
            channel = FileChannel.open(path, StandardOpenOption.READ);
            var reader = new WavReader(path, channel);
            reader.readHeader();
            good = true;
            return reader;
        } catch (IOException e) {
            throw Refused.setup(path.toString(), "cannot be read (" + e.getMessage() + ")", "", e);
        } finally {
            if (channel != null && !good) {
                closeQuietly(channel);
            }
        }
    }

    public int channels() {
        return channels;
    }

    public int rateHz() {
        return rateHz;
    }

    public SampleFormat format() {
        return format;
    }

    /** Frames in the whole file. */
    public long frames() {
        return dataBytes / (channels * format.bytes());
    }

    /**
     * Reads what comes next.
     *
     * @param into one array a channel, each at least {@code frames} long; gets fractions of full scale, -1 to 1 (a float file may go beyond)
     * @return frames read: fewer than asked for only at the end of the file, then 0
     */
    public int read(double[][] into, int frames) {
        int wanted = (int) Math.min(frames, frames() - frameAt);
        for (int done = 0; done < wanted; ) {
            int part = Math.min(BLOCK_FRAMES, wanted - done);
            fillBlock(part);
            for (int i = done; i < done + part; i++) {
                for (int c = 0; c < channels; c++) {
                    into[c][i] = format.read(block);
                }
            }
            done += part;
            frameAt += part;
        }
        return wanted;
    }

    /** Moves to a frame, 0 to {@link #frames}. */
    public void seek(long frame) {
        if (frame < 0 || frame > frames()) {
            throw new IllegalArgumentException("frame " + frame + " of " + frames());
        }
        frameAt = frame;
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }

    private void fillBlock(int frames) {
        int frameBytes = channels * format.bytes();
        if (block == null) {
            block = ByteBuffer.allocate(BLOCK_FRAMES * frameBytes).order(ByteOrder.LITTLE_ENDIAN);
        }
        block.clear().limit(frames * frameBytes);
        readAt(block, dataStart + frameAt * frameBytes);
    }

    private void readHeader() {
        ByteBuffer start = at(0, 12, "the file's beginning");
        String magic = tag(start);
        start.getInt(); // The RIFF size says nothing that the chunks do not.
        if (!(magic.equals("RIFF") || magic.equals("RF64")) || !tag(start).equals("WAVE")) {
            throw Refused.at(path.toString(), "is not a WAV file: it does not begin with RIFF or RF64 and WAVE", "");
        }
        long largeDataBytes = -1;
        long position = 12;
        while (dataStart < 0) {
            if (position == fileBytes) {
                throw Refused.at(path.toString(), "ends at byte " + position + " without any samples"
                        + (format == null ? " and without saying their format" : ""), "it is cut short");
            }
            ByteBuffer chunk = at(position, 8, "a chunk");
            String tag = tag(chunk);
            long bytes = chunk.getInt() & 0xFFFFFFFFL;
            position += 8;
            if (tag.equals("data")) {
                takeData(position, magic.equals("RF64") && bytes == NOT_SAID ? largeDataBytes : bytes);
            } else if (tag.equals("ds64")) {
                ByteBuffer sizes = at(position, WavHeader.DS64_BYTES, "the chunk \"ds64\"");
                sizes.getLong();
                largeDataBytes = sizes.getLong();
            } else if (tag.equals("fmt ")) {
                takeFormat(position, bytes);
            }
            position += bytes + (bytes & 1);
        }
    }

    private void takeFormat(long position, long bytes) {
        if (bytes < 16) {
            throw Refused.at(path.toString(), "byte " + position + ": the format takes " + bytes
                    + " bytes, at least 16 are needed", "the file is damaged");
        }
        ByteBuffer f = at(position, (int) Math.min(bytes, 40), "the format");
        int code = f.getShort() & 0xFFFF;
        channels = f.getShort() & 0xFFFF;
        rateHz = f.getInt();
        f.getInt();
        int frameBytes = f.getShort() & 0xFFFF;
        int bits = f.getShort() & 0xFFFF;
        if (code == WavHeader.CODE_EXTENSIBLE && bytes >= 40) {
            code = f.getInt(24);
        }
        if (channels < 1 || rateHz < 1) {
            throw Refused.at(path.toString(), "byte " + position + ": says " + channels + " channels at " + rateHz
                    + " Hz", "the file is damaged");
        }
        format = formatOf(code, bits);
        if (format == null) {
            throw Refused.at(path.toString(), "holds " + bits + "-bit samples of kind " + code, "16, 24 and 32-bit whole numbers (kind 1) and 32-bit floats (kind 3) can be read: "
                    + "convert it to one of those");
        }
        if (frameBytes != channels * format.bytes()) {
            throw Refused.at(path.toString(), "byte " + (position + 12) + ": says " + frameBytes
                    + " bytes a frame, but " + channels + " channels of " + bits + " bits take "
                    + channels * format.bytes(), "the file is damaged");
        }
    }

    private static SampleFormat formatOf(int code, int bits) {
        if (code == WavHeader.CODE_FLOAT) {
            return bits == 32 ? SampleFormat.FLOAT32 : null;
        }
        if (code != WavHeader.CODE_PCM) {
            return null;
        }
        return switch (bits) {
            case 16 -> SampleFormat.PCM16;
            case 24 -> SampleFormat.PCM24;
            case 32 -> SampleFormat.PCM32;
            default -> null;
        };
    }

    private void takeData(long position, long bytes) {
        if (format == null) {
            throw Refused.at(path.toString(), "byte " + position + ": samples come before their format", "the file is damaged");
        }
        long there = fileBytes - position;
        if (bytes < 0 || bytes == NOT_SAID && there != NOT_SAID || bytes == 0 && there > 0) {
            throw Refused.at(path.toString(), "byte " + (position - 4) + ": does not say how many samples follow", "the program that wrote it did not finish: open and save it in a sound editor");
        }
        if (bytes > there) {
            throw Refused.at(path.toString(), "is cut short: " + bytes + " bytes of samples announced, " + there
                    + " there", "copy or record it again");
        }
        int frameBytes = channels * format.bytes();
        if (bytes % frameBytes != 0) {
            throw Refused.at(path.toString(), "byte " + (position - 4) + ": " + bytes
                    + " bytes of samples are not whole frames of " + frameBytes + " bytes", "the file is damaged");
        }
        dataStart = position;
        dataBytes = bytes;
    }

    private ByteBuffer at(long position, int bytes, String what) {
        ByteBuffer buffer = ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
        if (position + bytes > fileBytes) {
            throw Refused.at(path.toString(), "is cut short: it ends at byte " + fileBytes + ", within " + what
                    + " that begins at byte " + position, "copy or record it again");
        }
        readAt(buffer, position);
        return buffer;
    }

    private void readAt(ByteBuffer buffer, long position) {
        try {
            while (buffer.hasRemaining()) {
                int got = channel.read(buffer, position);
                if (got < 0) {
                    throw Refused.at(path.toString(), "became shorter while it was read", "try again");
                }
                position += got;
            }
        } catch (IOException e) {
            throw Refused.setup(path.toString(), "cannot be read (" + e.getMessage() + ")", "", e);
        }
        buffer.flip();
    }

    private static String tag(ByteBuffer buffer) {
        byte[] tag = new byte[4];
        buffer.get(tag);
        return new String(tag, StandardCharsets.ISO_8859_1);
    }

    private static void closeQuietly(FileChannel channel) {
        try {
            channel.close();
        } catch (IOException e) {
            // It was only being read.
        }
    }
}
