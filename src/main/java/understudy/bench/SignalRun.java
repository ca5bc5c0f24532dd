package understudy.bench;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import understudy.pattern.Output;
import understudy.refusal.Control;
import understudy.refusal.Remedy;
import understudy.rig.OutputScale;
import understudy.wave.DroopFree;
import understudy.wave.Hand;
import understudy.wave.MeanVolts;
import understudy.wave.Renderer;
import understudy.wave.VoltSource;

/** The samples of a plan, from its start to wherever it is read: the renderer, what undoes the droop, the channels. */
public final class SignalRun {

    private final Renderer renderer;
    private final Optional<DroopFree> droopFree;
    private final VoltSource source;
    private final OutputScale scale;

    SignalRun(SignalPlan plan, AtomicReference<Hand> hand) {
        this.renderer = new Renderer(plan.pattern(), plan.rateHz(), plan.startHz(), hand);
        this.droopFree = plan.hookups().isEmpty() ? Optional.empty() : Optional.of(droopFree(plan, renderer));
        this.source = plan.channels().route(droopFree.<VoltSource>map(bent -> bent).orElse(renderer));
        // what undoes the droop gives parts of full scale already
        this.scale = droopFree.isPresent() ? OutputScale.PARTS
                : new OutputScale(OutputScale.NOMINAL.fullScaleVolts() / plan.level(), OutputScale.NOMINAL.calibrated());
    }

    private static DroopFree droopFree(SignalPlan plan, VoltSource volts) {
        List<Output> outputs = plan.pattern().outputs();
        return new DroopFree(volts, outputs.stream().map(output -> plan.hookups().of(output).map(Hookup::connection)).toList(),
                outputs.stream().mapToDouble(MeanVolts::of).toArray(), plan.level());
    }

    /** In volts of {@link #scale}. */
    VoltSource source() {
        return source;
    }

    OutputScale scale() {
        return scale;
    }

    /** Turns per second where it is read just now. Any thread may ask. */
    public double speedHz() {
        return renderer.speedHz();
    }

    /** After the last sample: what full scale did not allow, if anything. */
    public Optional<Remedy> shortage() {
        long frames = droopFree.map(DroopFree::clippedFrames).orElse(0L);
        return frames == 0 ? Optional.empty() : Optional.of(Remedy.of("full scale was not enough for " + frames
                + " samples: the signal drooped or was cut there; a lower level, or ").set(Control.FIT).then(", leaves more room"));
    }
}
