package understudy.pattern;

import java.util.List;
import java.util.Optional;
import understudy.text.Fields;
import understudy.text.Problems;

/**
 * The fields of one fault with the output that it acts on.
 *
 * @param output empty where the output can't be read: then nothing about it is judged
 */
record FaultFields(Fields fields, Optional<Output> output, Problems problems) {

    /** A problem at {@code key} where the output's signal is none of these kinds. */
    void onlyOn(String key, String right, List<Class<? extends Signal>> kinds) {
        output.map(Output::signal).filter(signal -> kinds.stream().noneMatch(kind -> kind.isInstance(signal)))
                .ifPresent(signal -> fields.problem(key,
                        "this makes no sense on \"" + output.get().name() + "\", which plays " + kind(signal), right));
    }

    void onlyOnWheel(String key) {
        onlyOn(key, "use it on an output with a wheel", List.of(WheelSignal.class));
    }

    /** A problem where the output is a Hall sensor's. */
    void notOnHall(String key, String right) {
        wheelSignal().filter(signal -> signal.sensor() instanceof Hall).ifPresent(signal -> fields.problem(key,
                "this makes no sense on \"" + output.get().name() + "\", whose Hall sensor knows only two levels", right));
    }

    Optional<WheelSignal> wheelSignal() {
        return output.map(Output::signal)
                .flatMap(signal -> signal instanceof WheelSignal wheel ? Optional.of(wheel) : Optional.empty());
    }

    Optional<Wheel> wheel() {
        return wheelSignal().map(WheelSignal::wheel);
    }

    static String kind(Signal signal) {
        if (signal instanceof Tone) {
            return "a tone";
        } else if (signal instanceof Bursts) {
            return "bursts";
        } else if (signal instanceof DrawnCycle) {
            return "a drawn cycle";
        }
        return "a wheel";
    }
}
