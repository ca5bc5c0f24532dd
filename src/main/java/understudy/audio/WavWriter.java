package understudy.audio;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import understudy.refusal.Refused;

/**
 * Writes a WAV file of any length in bounded memory; the target appears whole or not at all.
 *
 * <p>The bytes go to a temporary file beside the target, which {@link #commit} moves into place. {@link #close}
 * without commit, and the end of the program, remove it. Channels 1 to 65535 bytes a frame; 16, 24 and 32 bits and
 * float. Beyond 4 GiB the file is RF64 (see {@link WavHeader}). Not thread safe.
 */
final class WavWriter implements Closeable, FileLine.Sink {

    private final Path target;
    /** Where the bytes go until they are complete. */
    private final Path partial;
    private final FileChannel channel;
    private final WavHeader header;
    private final long riffLimitBytes;
    private final Thread removal;
    private long dataBytes;
    private boolean open = true;

    private WavWriter(Path target, Path partial, FileChannel channel, WavHeader header, long riffLimitBytes) {
        this.target = target;
        this.partial = partial;
        this.channel = channel;
        this.header = header;
        this.riffLimitBytes = riffLimitBytes;
        this.removal = new Thread(this::remove, "remove-partial-file");
    }

    /** @throws Refused when no such file can be written there; nothing is left behind */
    static WavWriter create(Path target, int channels, int rateHz, SampleFormat format) {
        return create(target, channels, rateHz, format, WavHeader.RIFF_LIMIT_BYTES);
    }

    /** As {@link #create(Path, int, int, SampleFormat)}, with RF64 from another size on. */
    static WavWriter create(Path target, int channels, int rateHz, SampleFormat format, long riffLimitBytes) {
        if (format == SampleFormat.PCM24_IN_4) {
            throw new IllegalArgumentException("24 bits in 4 bytes is for lines; a file has PCM24");
        }
        if (channels < 1 || channels * format.bytes() > 0xFFFF || rateHz < 1) {
            throw new IllegalArgumentException("cannot write " + channels + " channels at " + rateHz + " Hz");
        }
        Path place = placeFor(target);
        Path partial = place.resolveSibling(
                "." + place.getFileName() + "." + ProcessHandle.current().pid() + "-" + System.nanoTime() + ".part");
        try {
            FileChannel channel =
                    FileChannel.open(partial, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            var header = new WavHeader(channels, rateHz, format);
            var writer = new WavWriter(place, partial, channel, header, riffLimitBytes);
            Runtime.getRuntime().addShutdownHook(writer.removal);
            try {
                writer.writeFully(header.bytes(0, riffLimitBytes));
            } catch (Refused e) {
                writer.close();
                throw e;
            }
            return writer;
        } catch (IOException e) {
            throw Refused.setup(target.toString(), "cannot write in this folder (" + reason(e)
                    + ")", "choose another folder, or ask for the right to write here", e);
        }
    }

    /** Where the bytes will really go: a link is followed, so that the link itself survives. */
    private static Path placeFor(Path target) {
        if (Files.isDirectory(target)) {
            throw Refused.at(target.toString(), "is a folder", "give the name of a file in it");
        }
        Path place = target.toAbsolutePath();
        if (Files.exists(target)) {
            if (!Files.isRegularFile(target)) {
                throw Refused.at(target.toString(), "is not an ordinary file", "give the name of a file");
            }
            try {
                place = target.toRealPath();
            } catch (IOException e) {
                throw Refused.setup(target.toString(), "cannot be reached (" + reason(e) + ")", "", e);
            }
        }
        if (place.getParent() == null || !Files.isDirectory(place.getParent())) {
            throw Refused.at(target.toString(), "there is no folder " + place.getParent(), "make it first");
        }
        return place;
    }

    /** The file as it will be. */
    @Override
    public Path target() {
        return target;
    }

    /** Fails at once, before anything is written, when the disk cannot take so many bytes of samples. */
    void reserve(long bytes) {
        long free;
        try {
            free = Files.getFileStore(partial).getUsableSpace();
        } catch (IOException e) {
            return; // Not every file system tells; a full disk then shows when it is full.
        }
        if (bytes > free) {
            throw Refused.setup(target.toString(), "this needs " + megabytes(bytes) + " and the disk has "
                    + megabytes(free) + " free", "make room, shorten it, or choose another disk");
        }
    }

    /** Appends bytes, whole frames or not. */
    void write(byte[] bytes, int length) {
        write(bytes, 0, length);
    }

    @Override
    public void write(byte[] bytes, int offset, int length) {
        writeFully(ByteBuffer.wrap(bytes, offset, length));
        dataBytes += length;
    }

    /** Bytes of samples so far. */
    long dataBytes() {
        return dataBytes;
    }

    /** Completes the header and puts the file in its place; what had that name before is replaced in one step. */
    @Override
    public void commit() {
        if (!open) {
            throw new IllegalStateException("already closed");
        }
        try {
            if ((dataBytes & 1) == 1) {
                writeFully(ByteBuffer.allocate(1));
            }
            channel.position(0);
            writeFully(header.bytes(dataBytes, riffLimitBytes));
            channel.close();
            moveIntoPlace();
        } catch (IOException e) {
            throw failed(e);
        } finally {
            close();
        }
    }

    private void moveIntoPlace() throws IOException {
        try {
            Files.move(partial, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(partial, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** Without a {@link #commit} before, leaves nothing. Does nothing the second time. */
    @Override
    public void close() {
        if (!open) {
            return;
        }
        open = false;
        remove();
        try {
            Runtime.getRuntime().removeShutdownHook(removal);
        } catch (IllegalStateException e) {
            // The program is ending, and the hook runs anyway.
        }
    }

    private void remove() {
        try {
            channel.close();
            Files.deleteIfExists(partial);
        } catch (IOException e) {
            // What brought us here is already being told, or the program is ending.
        }
    }

    private void writeFully(ByteBuffer bytes) {
        try {
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
        } catch (IOException e) {
            throw failed(e);
        }
    }

    private Refused failed(IOException e) {
        String text = reason(e);
        boolean full = text.toLowerCase(Locale.ROOT).contains("space");
        return Refused.setup(full
                ? target + ": the disk is full after " + megabytes(dataBytes)
                        + "; nothing was kept; make room or choose another disk"
                : target + ": could not be written (" + text + ")", "nothing was kept", e);
    }

    /** The system's own words, without the name of the temporary file. */
    private static String reason(IOException e) {
        if (e instanceof java.nio.file.AccessDeniedException) {
            return "access denied";
        }
        if (e instanceof java.nio.file.FileSystemException f && f.getReason() != null) {
            return f.getReason();
        }
        return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
    }

    private static String megabytes(long bytes) {
        return String.format(Locale.ROOT, "%.1f MB", bytes / 1e6);
    }
}
