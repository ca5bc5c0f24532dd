package understudy.audio;

/** A rehearsal: real time, no sound, nothing leaves the machine. */
public record Silent(int rateHz, int channels) implements Destination {}
