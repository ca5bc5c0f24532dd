package understudy.rig;

/**
 * The most that one state does, peak values without sign.
 *
 * @param clipAmps    through a clip, all of it
 * @param rigAmps     what is added to that by the state, over playing nothing: in normal use the rig's own share
 * @param inputAmps   through a clip with nothing played: what the input's own pull-up or bias drives back through the rig
 * @param jackVolts   at the audio jack
 * @param jackAmps    into or out of the audio jack
 * @param seriesWatts in the series resistor, or the hotter of two, once it lasts
 * @param shuntWatts  in the shunt resistor, once it lasts
 */
public record StateReport(
        State state,
        double clipAmps,
        double rigAmps,
        double inputAmps,
        double jackVolts,
        double jackAmps,
        double seriesWatts,
        double shuntWatts) {

    /** The current that is held against the limit. */
    public double judgedAmps() {
        return state.isFault() ? clipAmps : rigAmps;
    }

    StateReport worse(StateReport other) {
        return new StateReport(state, Math.max(clipAmps, other.clipAmps), Math.max(rigAmps, other.rigAmps),
                Math.max(inputAmps, other.inputAmps), Math.max(jackVolts, other.jackVolts),
                Math.max(jackAmps, other.jackAmps), Math.max(seriesWatts, other.seriesWatts),
                Math.max(shuntWatts, other.shuntWatts));
    }
}
