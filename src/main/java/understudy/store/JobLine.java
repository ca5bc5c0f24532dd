package understudy.store;

import java.time.Instant;

/**
 * A job as a list shows it.
 *
 * @param name         of the job
 * @param begun        when
 * @param vehicle      in the user's words; may be empty
 * @param complaint    in the user's words; may be empty
 * @param who          does the work; may be empty
 * @param circuitTitle of the suspect circuit
 * @param events       how many there are
 * @param state        how it stands, in a few words
 * @param closed       whether nothing is left to do
 * @param archived     whether it was put away
 * @param changed      when something was last added to it
 */
public record JobLine(
        String name,
        Instant begun,
        String vehicle,
        String complaint,
        String who,
        String circuitTitle,
        int events,
        String state,
        boolean closed,
        boolean archived,
        Instant changed) {}
