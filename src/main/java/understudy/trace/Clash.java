package understudy.trace;

/**
 * Two injections that can't both be right if there is one fault: good at a point, bad at the same or one nearer to the
 * module.
 *
 * @param goodNumber the event that read good
 * @param badNumber  the event that read bad
 */
public record Clash(int goodNumber, int badNumber) {}
