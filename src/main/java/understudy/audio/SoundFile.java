package understudy.audio;

import java.nio.file.Path;

/** A WAV file of 24 bits, written in real time while the user's hand moves; nothing leaves the machine. */
public record SoundFile(Path path, int rateHz, int channels) implements Destination {}
