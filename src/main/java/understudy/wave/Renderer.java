package understudy.wave;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import understudy.motion.Motion;
import understudy.pattern.Bursts;
import understudy.pattern.DrawnCycle;
import understudy.pattern.Fault;
import understudy.pattern.Hall;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Reluctor;
import understudy.pattern.Tone;
import understudy.pattern.Wheel;
import understudy.pattern.WheelSignal;

/**
 * Angle and time to volts: plays a pattern, sample by sample. Owned by one thread; only the {@link Hand} is shared.
 *
 * <p>Inside, time goes by quanta of {@value Motion#QUANTUM} frames, so the samples are the same however the blocks are
 * cut. A new {@link Hand} is read once a quantum; a speed takes two quanta more to act, a level or a fault none.
 * {@link #render} allocates nothing.
 */
public final class Renderer implements VoltSource {
    /** Time in which the level goes from 0 to 1 or back when the hand moves it. */
    public static final double LEVEL_SLEW_SECONDS = 0.02;
    /** Faults of one pattern; a {@link Hand} has a bit for each. */
    public static final int MOST_FAULTS = 64;

    private final int rateHz;
    private final AtomicReference<Hand> hand;
    private final double slowestHz;
    private final double fastestHz;
    private final Motion motion;
    private final List<Motion> fixedMotions = new ArrayList<>();
    private final Channel[] channels;
    private final double mostLevelChange;

    private int ready;
    private double level;
    private boolean started;
    private volatile double speedHz;

    /**
     * @param pattern what to play
     * @param rateHz  frames a second
     * @param startHz speed at the start in turns per second; a profile with speeds of its own soon leaves it
     * @param hand    the user's wishes, replaced as a whole whenever they change
     */
    public Renderer(Pattern pattern, int rateHz, double startHz, AtomicReference<Hand> hand) {
        if (pattern.faults().size() > MOST_FAULTS) {
            throw new IllegalArgumentException("at most " + MOST_FAULTS + " faults, got " + pattern.faults().size());
        }
        this.rateHz = rateHz;
        this.hand = hand;
        this.slowestHz = pattern.speed().fromHz();
        this.fastestHz = pattern.speed().toHz();
        this.motion = new Motion(pattern.profile().orElse(null), startHz, rateHz);
        this.mostLevelChange = 1 / (LEVEL_SLEW_SECONDS * rateHz);
        this.speedHz = startHz;
        this.channels = new Channel[pattern.outputs().size()];
        for (int i = 0; i < channels.length; i++) {
            channels[i] = channel(pattern, i);
        }
    }

    /** The hand as a pattern starts: the profile's speed, full level, the faults that are declared on. */
    public static Hand startingHand(Pattern pattern) {
        Hand start = new Hand(Double.NaN, 1, 0);
        for (int i = 0; i < pattern.faults().size(); i++) {
            start = start.withFault(i, pattern.faults().get(i).place().on());
        }
        return start;
    }

    @Override
    public int channels() {
        return channels.length;
    }

    @Override
    public int rateHz() {
        return rateHz;
    }

    /** Turns per second at the frame rendered last; may be read by any thread. */
    public double speedHz() {
        return speedHz;
    }

    @Override
    public void render(double[][] volts, int frames) {
        int done = 0;
        while (done < frames) {
            if (ready == 0) {
                renderQuantum();
                ready = Motion.QUANTUM;
            }
            int some = Math.min(ready, frames - done);
            for (int c = 0; c < channels.length; c++) {
                System.arraycopy(channels[c].volts, Motion.QUANTUM - ready, volts[c], done, some);
            }
            ready -= some;
            done += some;
        }
    }

    private void renderQuantum() {
        Hand now = hand.get();
        motion.advance(Math.max(slowestHz, Math.min(fastestHz, now.speedHz())), now.travel().orElse(null));
        for (int i = 0; i < fixedMotions.size(); i++) {
            fixedMotions.get(i).advance(Double.NaN);
        }
        double from = started ? level : now.level();
        started = true;
        for (Channel channel : channels) {
            channel.render(motion, now.faultsOn());
            level = slewLevel(channel.volts, from, now.level());
        }
        speedHz = motion.speedAtFrame(Motion.QUANTUM - 1) * rateHz;
    }

    private double slewLevel(double[] volts, double from, double to) {
        if (from == 1 && to == 1) {
            return 1;
        }
        double now = from;
        for (int i = 0; i < Motion.QUANTUM; i++) {
            if (now != to) {
                now += Math.max(-mostLevelChange, Math.min(mostLevelChange, to - now));
            }
            volts[i] *= now;
        }
        return now;
    }

    /** One output: its voice, and what disturbs its line. */
    private static final class Channel {
        final double[] volts = new double[Motion.QUANTUM];
        private final Voice voice;
        private final Axis turnAxis;
        private final Disturbance[] disturbances;

        Channel(Voice voice, Axis turnAxis, List<Disturbance> disturbances) {
            this.voice = voice;
            this.turnAxis = turnAxis;
            this.disturbances = disturbances.toArray(new Disturbance[0]);
        }

        void render(Motion motion, long faultsOn) {
            voice.render(volts, faultsOn);
            if (disturbances.length > 0) {
                turnAxis.follow(motion);
                for (Disturbance disturbance : disturbances) {
                    disturbance.apply(volts, motion, turnAxis, faultsOn);
                }
            }
        }
    }

    private Channel channel(Pattern pattern, int index) {
        Output output = pattern.outputs().get(index);
        List<Switch> switches = new ArrayList<>();
        for (int i = 0; i < pattern.faults().size(); i++) {
            Fault fault = pattern.faults().get(i);
            boolean mine = fault.place().output().equals(output.name());
            switches.add(mine ? new Switch(fault, i, pattern.seed(), rateHz) : null);
        }
        double lateTurns = output.phaseDeg() / 360;
        Axis turnAxis = new Axis(output.ratio(), lateTurns);
        Voice voice = voice(pattern, output, lateTurns, switches);
        List<Disturbance> disturbances = new ArrayList<>();
        for (int i = 0; i < switches.size(); i++) {
            if (switches.get(i) != null) {
                // streams above the switches' own, so that no two draws are tied
                Chance chance = new Chance(pattern.seed(), MOST_FAULTS + i);
                Disturbance disturbance = Disturbance.of(
                        pattern.faults().get(i), switches.get(i), motion, turnAxis, voice.restVolts(), chance, rateHz);
                if (disturbance != null) {
                    disturbances.add(disturbance);
                }
            }
        }
        return new Channel(voice, turnAxis, disturbances);
    }

    private Voice voice(Pattern pattern, Output output, double lateTurns, List<Switch> switches) {
        if (output.signal() instanceof WheelSignal wheelSignal) {
            Wheel wheel = wheelSignal.wheel();
            Axis axis = new Axis(output.ratio() * 360 / wheel.overDeg(), lateTurns);
            ToothTrain teeth = new ToothTrain(wheel, axis, motion, pattern.faults(), switches);
            return wheelSignal.sensor() instanceof Hall hall
                    ? new EdgeVoice(hall, motion, axis, teeth)
                    : new FluxVoice((Reluctor) wheelSignal.sensor(), wheel, motion, axis, teeth, rateHz);
        } else if (output.signal() instanceof Bursts bursts) {
            Axis axis = new Axis(output.ratio() * 360 / bursts.overDeg(), lateTurns);
            // one more range of streams: a channel each
            Chance chance = new Chance(pattern.seed(), 2 * MOST_FAULTS + pattern.outputs().indexOf(output));
            return new BurstVoice(bursts, motion, axis, chance, rateHz);
        } else if (output.signal() instanceof DrawnCycle drawn) {
            return new LineVoice(drawn, 0, motion, new Axis(output.ratio() * 360 / drawn.overDeg(), lateTurns));
        }
        return tone((Tone) output.signal(), output, lateTurns);
    }

    private Voice tone(Tone tone, Output output, double lateTurns) {
        Motion driver = motion;
        Axis axis = new Axis(tone.fixedFrequency() ? 1 : output.ratio() * tone.cyclesPerTurn(), lateTurns);
        if (tone.fixedFrequency()) {
            driver = new Motion(null, tone.frequencyHz(), rateHz);
            fixedMotions.add(driver);
        }
        double peak = tone.peakToPeakVolts() / 2;
        double low = tone.offsetVolts() - peak;
        double high = tone.offsetVolts() + peak;
        return switch (tone.shape()) {
            case SINE -> new SineVoice(peak, tone.offsetVolts(), driver, axis);
            case TRIANGLE -> new LineVoice(Shapes.triangle(low, high, tone.part()), tone.offsetVolts(), driver, axis);
            case SQUARE -> new EdgeVoice(new Hall(low, high), driver, axis,
                    new ToothTrain(Shapes.oneTooth(tone.part()), axis, driver, List.of(), List.of()));
        };
    }
}
