package understudy.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.preflight.Setup;
import understudy.quantity.NumberText;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refusals;
import understudy.refusal.Remedy;
import understudy.rig.OutputScale;
import understudy.wave.Fit;
import understudy.wave.Hand;
import understudy.wave.OutputFacts;
import understudy.wave.Renderer;

/**
 * A signal that is fully decided on: which pattern, through which rigs, on which channels, at which level and rate.
 * Whatever plays, renders or judges a signal does it from here, so that what is judged is what is played. Immutable.
 */
public final class SignalPlan {

    public static final int DEFAULT_RATE_HZ = 48_000;
    /** What fitting makes of the output with the least room: near full scale, with room for what a converter's filter overshoots. */
    private static final double FIT_PART = Setup.FIT_PART;
    private static final double SETTLE_SECONDS = 0.5;
    private static final double LEAST_CYCLES = 4;

    private final Pattern pattern;
    private final double startHz;
    private final int rateHz;
    private final ChannelMap channels;
    private final Hookups hookups;
    private final double level;

    private SignalPlan(Pattern pattern, double startHz, int rateHz, ChannelMap channels, Hookups hookups, double level) {
        this.pattern = pattern;
        this.startHz = startHz;
        this.rateHz = rateHz;
        this.channels = channels;
        this.hookups = hookups;
        this.level = level;
    }

    /**
     * A plan, whether or not it may be played; {@link #check} says that.
     *
     * @param pattern with the profile, the faults and the seed asked for
     * @param startHz speed at the start, turns per second
     * @param rateHz  samples a second
     * @param fit     scale all outputs alike, so that the one with the least room nearly fills full scale
     */
    public static SignalPlan of(
            Pattern pattern, double startHz, int rateHz, ChannelMap channels, Hookups hookups, boolean fit) {
        SignalPlan asDeclared = new SignalPlan(pattern, startHz, rateHz, channels, hookups, 1);
        double level = fit ? asDeclared.tightest().map(output -> FIT_PART * asDeclared.room(output)).orElse(1.0) : 1;
        return new SignalPlan(pattern, startHz, rateHz, channels, hookups, level);
    }

    /** One healthy output at a steady speed, on the first channel: what is injected while a display is read. */
    public static SignalPlan steady(
            Pattern declared, Output output, double speedHz, int rateHz, Optional<Hookup> hookup, boolean fit) {
        Pattern pattern = declared.withProfile(Optional.empty()).withFaults(List.of()).withOutputs(List.of(output));
        return of(pattern, speedHz, rateHz, ChannelMap.all(pattern), Hookups.all(pattern.outputs(), hookup), fit);
    }

    public SignalPlan atRate(int otherHz) {
        return new SignalPlan(pattern, startHz, otherHz, channels, hookups, level);
    }

    public SignalPlan startingAt(double speedHz) {
        return new SignalPlan(pattern, speedHz, rateHz, channels, hookups, level);
    }

    public Pattern pattern() {
        return pattern;
    }

    /** Turns per second. */
    public double startHz() {
        return startHz;
    }

    public int rateHz() {
        return rateHz;
    }

    public ChannelMap channels() {
        return channels;
    }

    public Hookups hookups() {
        return hookups;
    }

    /** What the pattern's volts are multiplied by. */
    public double level() {
        return level;
    }

    /** Each output that is played, once. */
    public List<Output> played() {
        return channels.played(pattern);
    }

    /** Peak volts that an output's channel gives at full scale: at the pins, or, without a rig, at the bare output. */
    public double fullScaleVolts(Output output) {
        return hookups.of(output).map(Hookup::fullScaleVolts).orElse(OutputScale.NOMINAL.fullScaleVolts());
    }

    /** What full scale gives, as a multiple of what the output asks for at level 1. */
    private double room(Output output) {
        return fullScaleVolts(output) / peakVolts(output);
    }

    private double peakVolts(Output output) {
        OutputFacts facts = OutputFacts.of(pattern).get(pattern.outputs().indexOf(output));
        return hookups.of(output).map(hookup -> hookup.peakVolts(output, facts))
                .orElse(Math.max(facts.highestVolts(), -facts.lowestVolts()));
    }

    /** The played output with the least room; none when every channel is silent. */
    private Optional<Output> tightest() {
        return played().stream().min(Comparator.comparingDouble(this::room));
    }

    /** Refuses what may not be played: a rig over its current limit, a level over full scale. */
    public void check(Refusals problems) {
        checkLimits(problems);
        checkLevel(problems);
    }

    /** Refuses a rig that could exceed its current limits with this signal. */
    public void checkLimits(Refusals problems) {
        hookups.checkLimits(pattern, problems);
    }

    /** Refuses outputs that ask for more than full scale gives. */
    public void checkLevel(Refusals problems) {
        tightest().filter(output -> level * peakVolts(output) > fullScaleVolts(output) * (1 + 1e-12)).ifPresent(output -> {
            Optional<Hookup> hookup = hookups.of(output);
            String gives = hookup.map(known -> "rig " + known.rig().name() + " gives at the pins of this input")
                    .orElse("an audio output is taken to give");
            problems.add(new Refusal(Location.named(pattern.id()), "its output " + output.name() + " reaches "
                    + NumberText.of(level * peakVolts(output), Unit.VOLT)
                    + (hookup.filter(Hookup::blocksDirectVolts).isPresent() ? " to one side of its mean" : "")
                    + ", more than the " + NumberText.of(fullScaleVolts(output), Unit.VOLT) + " peak that " + gives,
                    Remedy.of("add ").set(Control.FIT).then(" to have all outputs scaled down alike")));
        });
    }

    /** Refuses shapes of which too little would be left at this sample rate. */
    public void checkRate(Refusals problems) {
        swingLosses().stream().filter(SwingLoss::isRefused).map(SwingLoss::refusal).forEach(problems::add);
    }

    /** Outputs whose shape is too quick for the sample rate at the highest speed that will surely be played. */
    public List<SwingLoss> swingLosses() {
        double fastestHz = pattern.profile().map(profile -> profile.fastestHz(startHz)).orElse(startHz);
        return Fit.of(pattern, rateHz, fastestHz).stream().filter(Fit::isWarned)
                .map(fit -> new SwingLoss(fit, pattern.speed())).toList();
    }

    /** What is judged before this is played: one output through its rig into its input, at the level that plays. */
    public Setup setup(Output output) {
        Hookup hookup = hookups.of(output).orElseThrow();
        double others = played().stream().filter(other -> !other.name().equals(output.name()))
                .mapToDouble(other -> FIT_PART * room(other)).min().orElse(Double.POSITIVE_INFINITY);
        return Setup.of(pattern, output, hookup.circuit(), hookup.input().input(), rateHz).withLevel(level).withMostLevel(others);
    }

    /** How each input will take its signal, a sentence for each output with a rig; outputs that are alike share one. */
    public List<Foresight> foresights() {
        List<Foresight> found = new ArrayList<>();
        Set<List<Object>> judged = new HashSet<>();
        for (Output output : played()) {
            hookups.of(output).filter(hookup -> judged.add(List.of(output.signal(), hookup)))
                    .ifPresent(hookup -> found.add(Foresight.of(output.name(), setup(output), startHz)));
        }
        return found;
    }

    /** What the volts are worth, in lines. */
    public String voltsNote() {
        String scaled = level == 1 ? "" : "scaled to fit: 1 V of the pattern comes out as "
                + new Quantity(level, Unit.VOLT).rounded(3) + "\n";
        return scaled + hookups.note().orElse("volts are not calibrated: an output of 1.0 V rms is taken for granted,"
                + " and yours may give 20 % less or more");
    }

    /** What a meter for alternating volts shows of the first output at the start's speed and full level. */
    public double alternatingVolts() {
        Renderer renderer = new Renderer(pattern, rateHz, startHz, hand());
        int settle = (int) (SETTLE_SECONDS * rateHz);
        int frames = (int) (Math.max(1, LEAST_CYCLES / startHz) * rateHz);
        double[][] volts = new double[renderer.channels()][settle + frames];
        renderer.render(volts, settle + frames);
        double sum = 0;
        double squares = 0;
        for (int frame = settle; frame < settle + frames; frame++) {
            sum += volts[0][frame];
            squares += volts[0][frame] * volts[0][frame];
        }
        double mean = sum / frames;
        return level * Math.sqrt(squares / frames - mean * mean);
    }

    /** Where the user's hand stands at the start. */
    public AtomicReference<Hand> hand() {
        return new AtomicReference<>(Renderer.startingHand(pattern));
    }

    /** The samples of this plan from its start, for one reader. */
    public SignalRun run(AtomicReference<Hand> hand) {
        return new SignalRun(this, hand);
    }
}
