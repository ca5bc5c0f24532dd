package understudy.cli;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicReference;
import understudy.audio.Destination;
import understudy.audio.Player;
import understudy.reading.Expected;
import understudy.trace.Subjects.Subject;
import understudy.wave.Hand;
import understudy.wave.Renderer;
import understudy.refusal.Refused;

/**
 * The signal of one circuit, ready to be injected: healthy, at the circuit's speed, its one output on the first channel.
 *
 * @param asked       the pattern with nothing but that output
 * @param destination where it goes
 * @param subject     whose it is
 */
record TraceSignal(Playable asked, Destination destination, Subject subject) {

    private static final double SETTLE_SECONDS = 0.5;
    private static final double LEAST_CYCLES = 4;

    /** @throws Refused for what {@code play} would refuse, too */
    static TraceSignal of(Subject subject, Optional<Bench> bench, boolean fit, int rateHz, OptionalInt askedRateHz,
            DestinationOptions.Chosen chosen) {
        SteadySignal steady = SteadySignal.of(subject.pattern(), subject.output(), subject.speedHz(), bench, fit, rateHz,
                askedRateHz, chosen);
        return new TraceSignal(steady.asked(), steady.destination(), subject);
    }

    /** What there is to know of it before it plays: the same that {@code play} says. */
    List<String> notes() {
        return new SteadySignal(asked, destination).notes();
    }

    double speedHz() {
        return asked.startHz();
    }

    double frequencyHz() {
        return subject.frequencyHz(speedHz());
    }

    Expected expected() {
        return subject.expected(speedHz());
    }

    AtomicReference<Hand> hand() {
        return asked.hand();
    }

    /** Ready to start, into the file if there is one. */
    Player open(AtomicReference<Hand> hand, Playable playable, Destination to) {
        return SteadySignal.open(hand, playable, to);
    }

    /** "1400 rpm, 396.7 Hz". */
    String words() {
        return asked.pattern().speed().print(speedHz()) + ", " + SignalWords.hertz(frequencyHz());
    }

    /** What a meter for alternating volts shows at the clips at full level. */
    double clipVolts() {
        Renderer renderer = asked.renderer(hand());
        int settle = (int) (SETTLE_SECONDS * asked.rateHz());
        int frames = (int) (Math.max(1, LEAST_CYCLES / speedHz()) * asked.rateHz());
        double[][] volts = new double[1][settle + frames];
        renderer.render(volts, settle + frames);
        double sum = 0;
        double squares = 0;
        for (int frame = settle; frame < settle + frames; frame++) {
            sum += volts[0][frame];
            squares += volts[0][frame] * volts[0][frame];
        }
        double mean = sum / frames;
        return asked.level() * Math.sqrt(squares / frames - mean * mean);
    }
}
