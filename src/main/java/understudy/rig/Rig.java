package understudy.rig;

/**
 * All that stands in for the sensor, as a circuit: audio output, divider and lead.
 */
public record Rig(AudioOutput output, Divider divider, Lead lead) {

    /** The same rig with other resistors. */
    public Rig withDivider(Divider other) {
        return new Rig(output, other, lead);
    }

    Rig settled(Pick pick) {
        return new Rig(output.settled(pick), divider.settled(pick), lead.settled(pick));
    }
}
