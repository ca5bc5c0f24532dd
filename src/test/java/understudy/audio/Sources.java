package understudy.audio;

import java.util.function.LongUnaryOperator;
import understudy.wave.VoltSource;

/** Volt sources with a closed form, for tests: volts of a channel at a frame. */
final class Sources {

    @FunctionalInterface
    interface Formula {
        double volts(int channel, long frame);
    }

    private Sources() {}

    static VoltSource of(int channels, int rateHz, Formula formula) {
        return new VoltSource() {
            private long frame;

            @Override
            public int channels() {
                return channels;
            }

            @Override
            public int rateHz() {
                return rateHz;
            }

            @Override
            public void render(double[][] volts, int frames) {
                for (int i = 0; i < frames; i++, frame++) {
                    for (int c = 0; c < channels; c++) {
                        volts[c][i] = formula.volts(c, frame);
                    }
                }
            }
        };
    }

    static VoltSource sine(int channels, int rateHz, double hz, double peakVolts) {
        double turnsPerFrame = hz / rateHz;
        return of(channels, rateHz, (c, n) -> {
            double turns = n * turnsPerFrame;
            return peakVolts * StrictMath.sin(2 * StrictMath.PI * (turns - Math.floor(turns)));
        });
    }

    static VoltSource constant(int channels, int rateHz, double volts) {
        return of(channels, rateHz, (c, n) -> volts);
    }

    /** Every frame has another value: a 24-bit number in steps of full scale 1 V, never zero. */
    static VoltSource counter(int channels, int rateHz) {
        LongUnaryOperator mix = n -> (n * 0x9E3779B97F4A7C15L >>> 41) | 1;
        return of(channels, rateHz, (c, n) -> (mix.applyAsLong(n * 8 + c) - 0x400000) * 0x1p-23);
    }
}
