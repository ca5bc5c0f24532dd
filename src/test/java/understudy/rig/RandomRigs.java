package understudy.rig;

import java.util.Optional;
import java.util.Random;

/** Rigs and inputs drawn over the whole of the model, from a seed. */
final class RandomRigs {
    private final Random random;

    private final double mostFarads;

    RandomRigs(long seed, double mostFarads) {
        this.random = new Random(seed);
        this.mostFarads = mostFarads;
    }

    /** Evenly over the decades. */
    double between(double low, double high) {
        return low * Math.pow(high / low, random.nextDouble());
    }

    private double evenly(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private Spread spread(double low, double high) {
        return Spread.exactly(between(low, high));
    }

    private Optional<Spread> maybe(double chance, double low, double high) {
        return random.nextDouble() < chance ? Optional.of(spread(low, high)) : Optional.empty();
    }

    Rig rig() {
        AudioOutput output = new AudioOutput(spread(0.7, 4.2), spread(0.5, 1000), maybe(0.7, mostFarads / 100, mostFarads),
                random.nextBoolean(), AudioOutput.USUAL_POP_VOLTS);
        int kind = random.nextInt(3);
        Coupling coupling = kind == 0 ? new Coupling.Direct()
                : kind == 1 ? new Coupling.Capacitor(spread(mostFarads / 100, mostFarads))
                : new Coupling.Transformer(spread(0.2, 5), spread(0.3, 20), spread(20, 500), spread(20, 500), 0.01);
        Divider divider = new Divider(spread(100, 100e3), maybe(0.8, 300, 100e3), coupling);
        return new Rig(output, divider, new Lead(spread(0.05, 1000), between(50e-12, 1e-9)));
    }

    Input input() {
        FrontEnd frontEnd = new FrontEnd(spread(1, 50e3), maybe(0.5, 1e-9, 100e-9), random.nextDouble() < 0.6
                ? Optional.of(new FrontEnd.Clamp(evenly(-0.7, -0.2), evenly(0.2, 5.5), between(1, 300)))
                : Optional.empty());
        switch (random.nextInt(4)) {
            case 0:
                return new PulledUpInput(Spread.exactly(evenly(4.5, 12)), spread(470, 22e3), 2.0, 3.8, frontEnd);
            case 1:
                return new ResistiveInput(spread(600, 1e6), 0.1, frontEnd);
            default:
                return new ReluctorInput(random.nextBoolean(), spread(2e3, 100e3), Spread.exactly(evenly(0, 3)),
                        spread(20e3, 1e6), 0, frontEnd, new Arming.Adaptive(0.35, 0.03, 0.085),
                        ReluctorInput.Edge.FALLING, 12e3);
        }
    }

    /** A part of full scale for each sample: slopes, steps and rests of all lengths. */
    double[] signal(int samples) {
        double[] signal = new double[samples];
        double value = 0;
        double slope = 0;
        for (int i = 1; i < samples; i++) {
            if (random.nextInt(12) == 0) {
                slope = evenly(-0.2, 0.2);
            }
            if (random.nextInt(40) == 0) {
                value = evenly(-1, 1);
                slope = 0;
            }
            value += slope;
            if (Math.abs(value) > 1) {
                value = Math.copySign(1, value);
                slope = 0;
            }
            signal[i] = value;
        }
        return signal;
    }
}
