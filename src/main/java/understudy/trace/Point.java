package understudy.trace;

/**
 * A place on a circuit where one can inject, or at least tell one stretch from the next.
 *
 * @param name         as people call it
 * @param reachMinutes to get there, clip on and read the display; above 0
 * @param injectable   whether the rig can be clipped on there
 */
public record Point(String name, double reachMinutes, boolean injectable) {}
