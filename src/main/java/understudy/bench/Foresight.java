package understudy.bench;

import understudy.preflight.Preflight;
import understudy.preflight.Setup;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;

/**
 * How an input will take its signal, before anything is played.
 *
 * @param output   its name
 * @param sentence what is to be expected, or why it can't be foreseen
 */
public record Foresight(String output, Remedy sentence) {

    static Foresight of(String output, Setup setup, double speedHz) {
        try {
            return new Foresight(output, Remedy.of(output + " " + Preflight.rangeOnly(setup, speedHz).summary()));
        } catch (Refused e) {
            return new Foresight(output, Remedy.of(e.wrong() + "; ").then(e.refusals().get(0).remedy()));
        }
    }
}
