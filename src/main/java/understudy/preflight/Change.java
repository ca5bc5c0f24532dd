package understudy.preflight;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import understudy.pattern.Bursts;
import understudy.pattern.Output;
import understudy.pattern.Reluctor;
import understudy.pattern.WheelSignal;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;
import understudy.rig.AudioOutput;
import understudy.rig.Coupling;
import understudy.rig.CurrentLimits;
import understudy.rig.Divider;
import understudy.rig.DividerSearch;
import understudy.rig.FrontEnd;
import understudy.rig.Input;
import understudy.rig.Lead;
import understudy.rig.Preferred;
import understudy.rig.PulledUpInput;
import understudy.rig.ReluctorInput;
import understudy.rig.ResistiveInput;
import understudy.rig.Rig;
import understudy.rig.Spread;
import understudy.rig.Use;

/**
 * One thing about a setup done otherwise.
 *
 * @param limit   what it would show to be the limit if it helped
 * @param remedy  what the user would do; empty when it can only be done on paper
 * @param changed the setup with it
 */
record Change(Limit limit, Optional<Remedy> remedy, Setup changed) {
    private static final int[] USUAL_RATES_HZ = {96_000, 192_000};
    /** Far beyond all that matters, and within what parts may be. */
    private static final double FAR = 1e3;
    private static final double NARROW_POLE = 0.2;
    private static final double NEARLY = 1.01;
    /** Of the metal-film resistors that everyone has. */
    private static final double PART_TOLERANCE = 0.01;
    private static final double CORNER_HZ = 2;

    /** All that may help, in the order of trying; what concerns fast signals only with {@code fast}. */
    static List<Change> of(Setup setup, boolean fast) {
        List<Change> all = new ArrayList<>();
        all.add(new Change(Limit.POLARITY, Optional.of(Remedy.of("swap the two clips, or the polarity of what is played")),
                setup.withSwapped(!setup.swapped())));
        addDroop(setup, all);
        addCore(setup, all);
        addRinging(setup, all);
        if (fast) {
            addBandwidth(setup, all);
        }
        addThreshold(setup, all);
        addSwing(setup, all);
        addShape(setup, all);
        return all;
    }

    private static void addDroop(Setup setup, List<Change> all) {
        if (!setup.isCoupled()) {
            return;
        }
        if (!setup.corrected()) {
            all.add(new Change(Limit.DROOP, Optional.of(Remedy.of("have the droop undone")), setup.withCorrection(true)));
        }
        if (setup.rig().divider().coupling() instanceof Coupling.Capacitor capacitor) {
            all.add(new Change(Limit.DROOP, Optional.of(Remedy.of("a coupling capacitor ten times as large, "
                    + print(10 * capacitor.farads().nominal(), Unit.FARAD))), setup.withRig(capacitors(setup.rig(), 1, 10))));
        }
        all.add(new Change(Limit.DROOP, Optional.empty(), setup.withRig(capacitors(setup.rig(), FAR, FAR))));
    }

    private static Rig capacitors(Rig rig, double outputTimes, double couplingTimes) {
        AudioOutput out = rig.output();
        Divider divider = rig.divider();
        Coupling coupling = divider.coupling();
        if (coupling instanceof Coupling.Capacitor c) {
            coupling = new Coupling.Capacitor(larger(c.farads(), couplingTimes));
        } else if (coupling instanceof Coupling.Transformer t) {
            coupling = new Coupling.Transformer(t.ratio(), larger(t.henries(), couplingTimes), t.primaryOhms(),
                    t.secondaryOhms(), t.mostVoltSeconds());
        }
        return new Rig(new AudioOutput(out.fullScaleVolts(), out.outputOhms(),
                out.couplingFarads().map(c -> larger(c, outputTimes)), out.inverted(), out.popVolts()),
                new Divider(divider.seriesOhms(), divider.shuntOhms(), coupling), rig.lead());
    }

    private static void addCore(Setup setup, List<Change> all) {
        if (setup.rig().divider().coupling() instanceof Coupling.Transformer t) {
            Divider divider = setup.rig().divider();
            all.add(halfTheVolts(Limit.CORE, setup));
            for (double times : new double[] {10, FAR}) {
                Coupling strong = new Coupling.Transformer(t.ratio(), t.henries(), t.primaryOhms(), t.secondaryOhms(),
                        Math.min(100, times * t.mostVoltSeconds()));
                all.add(new Change(Limit.CORE, times == FAR ? Optional.empty()
                        : Optional.of(Remedy.of("a transformer that carries ten times the volts at the same frequency")),
                        setup.withRig(setup.rig().withDivider(new Divider(divider.seriesOhms(), divider.shuntOhms(), strong)))));
            }
        }
    }

    private static void addRinging(Setup setup, List<Change> all) {
        if (setup.output().signal() instanceof Bursts ringing) {
            if (setup.input().frontEnd().clamp().isPresent()) { // it is in the way of nothing but volts to be told
                all.add(halfTheVolts(Limit.CLAMP, setup));
            }
            all.add(halfTheVolts(Limit.OVERLAP, setup));
            Output output = setup.output();
            Bursts shorter = new Bursts(ringing.frequencyHz(), ringing.decaySeconds() / 10, ringing.peakVolts(),
                    ringing.overDeg(), ringing.atDeg(), ringing.noiseVolts());
            all.add(new Change(Limit.OVERLAP, Optional.empty(), setup.withOutput(
                    new Output(output.name(), output.ratio(), output.phaseDeg(), shorter))));
        }
    }

    private static Change halfTheVolts(Limit limit, Setup setup) {
        return new Change(limit, Optional.of(Remedy.of("half the volts: " + print(0.5 * setup.askedPinVolts(), Unit.VOLT)
                + " at most between the pins")), setup.withLevel(0.5 * setup.level()));
    }

    private static Spread larger(Spread part, double times) {
        // parts have a largest size: a farad
        return new Spread(Math.min(1, part.nominal() * times), part.tolerance());
    }

    private static void addBandwidth(Setup setup, List<Change> all) {
        for (int rateHz : USUAL_RATES_HZ) {
            if (rateHz > setup.rateHz()) {
                all.add(new Change(Limit.BANDWIDTH, Optional.of(Remedy.of("").set(Control.RATE, String.valueOf(rateHz))), setup.withRate(rateHz)));
            }
        }
        Divider divider = setup.rig().divider();
        Rig quicker = setup.rig().withDivider(new Divider(times(divider.seriesOhms(), 0.5),
                divider.shuntOhms().map(shunt -> times(shunt, 0.5)), divider.coupling()));
        all.add(new Change(Limit.BANDWIDTH, Optional.of(Remedy.of("series and shunt resistor of half the ohms, if the limits allow")),
                setup.withRig(quicker)));
        Rig quick = new Rig(setup.rig().output(), divider, new Lead(setup.rig().lead().ohms(), 1e-12));
        all.add(new Change(Limit.BANDWIDTH, Optional.empty(), setup.withRig(quick).withInput(unfiltered(setup.input()))));
    }

    private static Input unfiltered(Input input) {
        FrontEnd old = input.frontEnd();
        FrontEnd front = new FrontEnd(old.seriesOhms(), Optional.empty(), old.clamp());
        if (input instanceof ReluctorInput r) {
            return new ReluctorInput(r.differential(), r.inputOhms(), r.biasVolts(), r.biasOhms(), r.referenceVolts(), front,
                    r.arming(), r.timing(), r.mostSensorOhms());
        } else if (input instanceof PulledUpInput p) {
            return new PulledUpInput(p.supplyVolts(), p.pullUpOhms(), p.lowBelowVolts(), p.highAboveVolts(), front);
        }
        ResistiveInput plain = (ResistiveInput) input;
        return new ResistiveInput(plain.inputOhms(), plain.leastPeakVolts(), front);
    }

    private static void addThreshold(Setup setup, List<Change> all) {
        Setup fitted = setup.fitted();
        if (fitted.level() > NEARLY * setup.level()) {
            all.add(new Change(Limit.THRESHOLD, Optional.of(Remedy.of("").set(Control.FIT).then(": "
                    + print(fitted.askedPinVolts(), Unit.VOLT) + " at most between the pins instead of "
                    + print(setup.askedPinVolts(), Unit.VOLT))), fitted));
        }
        Output output = setup.output();
        double leastHz = setup.pattern().speed().fromHz() * output.ratio();
        if (coil(output).isPresent() && leastHz > 0) {
            Reluctor coil = coil(output).get();
            Reluctor steep = new Reluctor(coil.ceilingVolts(), leastHz, coil.ceilingVolts(), coil.polePitches(), coil.reversed());
            all.add(new Change(Limit.THRESHOLD, Optional.of(Remedy.of("volts that rise faster with speed: "
                    + print(coil.ceilingVolts(), Unit.VOLT) + " peak to peak already at "
                    + setup.pattern().speed().print(leastHz / output.ratio()))), setup.withOutput(with(output, steep))));
        }
    }

    private static void addSwing(Setup setup, List<Change> all) {
        Rig rig = setup.rig();
        bestDivider(setup).ifPresent(best -> {
            Setup changed = setup.withRig(rig.withDivider(best)).fitted();
            all.add(new Change(Limit.SWING, Optional.of(Remedy.of("series " + print(best.seriesOhms().nominal(), Unit.OHM) + ", "
                    + best.shuntOhms().map(shunt -> "shunt " + print(shunt.nominal(), Unit.OHM)).orElse("no shunt")
                    + ", and ").set(Control.FIT)), changed));
        });
        AudioOutput out = rig.output();
        double full = Math.min(60, out.fullScaleVolts().nominal() * FAR); // 60 V is the most that an output may have
        Rig strong = new Rig(new AudioOutput(Spread.exactly(full), out.outputOhms(), out.couplingFarads(), out.inverted(),
                out.popVolts()), rig.divider(), rig.lead());
        all.add(new Change(Limit.SWING, Optional.empty(), setup.withRig(strong).fitted()));
    }

    /** The divider for this output and input with the best worst case within the limits, if there is one. */
    private static Optional<Divider> bestDivider(Setup setup) {
        Rig rig = setup.rig();
        double duty = CycleEvents.highPart(setup.output());
        try {
            return Optional.of(DividerSearch.best(new DividerSearch.Request(rig.output(), rig.lead(), setup.input(),
                    new Use(Setup.FIT_PART, duty, duty), Preferred.E24, PART_TOLERANCE, CORNER_HZ, CurrentLimits.STANDARD,
                    Optional.of(rig.divider().coupling()))).assessment().rig().divider());
        } catch (Refused e) {
            return Optional.empty(); // there is none; why, is the divider's own business to say
        }
    }

    private static void addShape(Setup setup, List<Change> all) {
        coil(setup.output()).filter(coil -> coil.polePitches() > NARROW_POLE).ifPresent(coil -> {
            Reluctor narrow = new Reluctor(
                    coil.peakToPeakVolts(), coil.atHz(), coil.ceilingVolts(), NARROW_POLE, coil.reversed());
            all.add(new Change(Limit.SHAPE, Optional.of(Remedy.of("a pole of 20 %, whose peaks are more alike")),
                    setup.withOutput(with(setup.output(), narrow))));
        });
    }

    private static Optional<Reluctor> coil(Output output) {
        return output.signal() instanceof WheelSignal wheel && wheel.sensor() instanceof Reluctor coil
                ? Optional.of(coil) : Optional.empty();
    }

    private static Output with(Output output, Reluctor coil) {
        return new Output(output.name(), output.ratio(), output.phaseDeg(),
                new WheelSignal(((WheelSignal) output.signal()).wheel(), coil));
    }

    private static Spread times(Spread part, double factor) {
        return new Spread(part.nominal() * factor, part.tolerance());
    }

    private static String print(double value, Unit unit) {
        return new Quantity(value, unit).rounded(3);
    }
}
