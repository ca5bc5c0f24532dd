package understudy.trace;

/**
 * Where the rig is clipped on.
 *
 * @param onReference on the reference circuit, not on the suspect one
 * @param point       index into that circuit's points
 */
public record Place(boolean onReference, int point) {}
