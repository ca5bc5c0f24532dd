package understudy.rig;

import java.util.List;
import java.util.Optional;
import understudy.quantity.Unit;
import understudy.refusal.Refused;

/** Says why a search found no divider: what stands in the way, and what would do. */
final class NoDivider {
    /** No audio output gives more: 3 V rms. */
    private static final double MOST_OUTPUT_VOLTS = 4.24;
    private static final double OUTPUT_STEP = 1.2;
    private static final CurrentLimits NONE = new CurrentLimits(1, 1, Optional.of("to find out what stands in the way"));

    private NoDivider() {}

    static Refused refusal(DividerSearch.Request request) {
        double volts = request.output().fullScaleVolts().nominal();
        String wrong = "no series and shunt resistor of " + request.series() + " make this input switch from this output of "
                + Bounds.print(volts, Unit.VOLT) + " peak within the limits; " + obstacle(request);
        for (double larger = volts * OUTPUT_STEP; larger < MOST_OUTPUT_VOLTS * OUTPUT_STEP; larger *= OUTPUT_STEP) {
            double tried = Math.min(larger, MOST_OUTPUT_VOLTS);
            if (DividerSearch.find(request.with(scaled(request.output(), tried), Preferred.E12, request.limits()))
                    .isPresent()) {
                return new Refused(wrong, "an output of " + Bounds.print(tried, Unit.VOLT) + " peak would do");
            }
        }
        return new Refused(wrong, "not even the strongest audio output, " + Bounds.print(MOST_OUTPUT_VOLTS, Unit.VOLT)
                + " peak, would do: test this circuit by other means");
    }

    private static String obstacle(DividerSearch.Request request) {
        Optional<Divider> unlimited = DividerSearch.find(request.with(request.output(), Preferred.E12, NONE));
        if (unlimited.isEmpty()) {
            return "even without regard to currents its swing is too small";
        }
        Assessment assessment = Assessment.of(
                DividerSearch.rig(request, unlimited.get()), request.input(), request.use());
        List<String> breaches = assessment.breaches(request.limits());
        State worst = assessment.worstState(request.limits());
        return "the best without regard to them, " + Assessment.words(unlimited.get()) + ", has "
                + Bounds.print(assessment.marginVolts(), Unit.VOLT) + " to spare, but breaks them: "
                + breaches.stream().filter(breach -> breach.startsWith(worst.words())).findFirst().orElse("");
    }

    private static AudioOutput scaled(AudioOutput output, double volts) {
        return new AudioOutput(new Spread(volts, output.fullScaleVolts().tolerance()), output.outputOhms(),
                output.couplingFarads(), output.inverted(), output.popVolts());
    }
}
