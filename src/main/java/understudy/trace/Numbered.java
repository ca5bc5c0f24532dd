package understudy.trace;

import java.time.Instant;

/**
 * An event of a job with its number.
 *
 * @param number   from 1
 * @param standing whether it counts: it was not withdrawn
 */
public record Numbered(int number, Instant at, Entry entry, boolean standing) {}
