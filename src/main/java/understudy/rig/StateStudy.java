package understudy.rig;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import understudy.rig.Network.Hold;

/**
 * Volts, currents and heat of one build in every {@link State}. In each state the network is solved at the first
 * instant, from before touching and from long use, and again long after, with the source at either end of its swing; in
 * between all currents run monotonically, so these are the peaks. The first instant is taken both with filters holding
 * their volts and with filters not yet drawing current.
 */
final class StateStudy {
    private final Rig rig;
    private final Use use;
    private final Input input;
    private final double peakVolts;
    private final double fullVolts;
    private final Wiring on;
    private final Wiring shortAtFirst;
    private final Optional<Wiring> shortAtSecond;
    private final double[] beforeTouch;
    private final double[] rest;
    private final List<double[]> playing = new ArrayList<>();
    private final List<Double> means = new ArrayList<>();

    StateStudy(Rig rig, Input input, Use use) {
        this.rig = rig;
        this.use = use;
        this.input = input;
        fullVolts = rig.output().fullScaleVolts().nominal();
        peakVolts = fullVolts * use.level();
        on = new Wiring(rig, input, Wiring.Clips.ON, Wiring.Shunting.FILTERS);
        shortAtFirst = new Wiring(rig, input, Wiring.Clips.FAULT_AT_FIRST_PIN, Wiring.Shunting.FILTERS);
        shortAtSecond = input.differential()
                ? Optional.of(new Wiring(rig, input, Wiring.Clips.FAULT_AT_SECOND_PIN, Wiring.Shunting.FILTERS))
                : Optional.empty();
        beforeTouch = Wiring.beforeTouch(rig, input, Wiring.Shunting.FILTERS);
        rest = settle(on, beforeTouch, 0, 0);
        for (double duty : use.leastDuty() == use.mostDuty()
                ? new double[] {use.leastDuty()} : new double[] {use.leastDuty(), use.mostDuty()}) {
            means.add(peakVolts * (2 * duty - 1));
            playing.add(duty == 0.5 ? rest : settle(on, rest, peakVolts * (2 * duty - 1), 0));
        }
    }

    StateReport report(State state) {
        Peaks peaks = new Peaks(state);
        switch (state) {
            case NORMAL -> {
                for (double[] before : playing) {
                    peaks.swing(on, before, peakVolts, 0, true);
                }
            }
            case FULL_SCALE -> {
                for (double end : new double[] {fullVolts, -fullVolts}) {
                    double[] stuck = settle(on, rest, end, 0);
                    peaks.look(on, stuck, end, 0, true);
                    peaks.look(on, stuck, -end, 0, true);
                }
            }
            case FIRST_TOUCH -> peaks.swing(on, beforeTouch, peakVolts, 0, false);
            case POWER_UP -> {
                peaks.swing(on, rest, rig.output().popVolts(), 0, false);
                peaks.swing(on, beforeTouch, rig.output().popVolts(), 0, false);
            }
            default -> {
                shorted(peaks, shortAtFirst, state.pinVolts());
                shortAtSecond.ifPresent(wiring -> shorted(peaks, wiring, state.pinVolts()));
            }
        }
        return peaks.report();
    }

    private void shorted(Peaks peaks, Wiring wiring, double pinVolts) {
        peaks.swing(wiring, beforeTouch, peakVolts, pinVolts, false);
        for (int i = 0; i < playing.size(); i++) {
            peaks.swing(wiring, playing.get(i), peakVolts, pinVolts, false);
            peaks.swing(wiring, settle(wiring, playing.get(i), means.get(i), pinVolts), peakVolts, pinVolts, true);
        }
    }

    private static double[] settle(Wiring wiring, double[] from, double sourceVolts, double pinVolts) {
        return wiring.network.solve(Hold.SETTLED, from, sourceVolts, pinVolts).state();
    }

    /** Every state's worst over all builds, and the first that breaks a limit. */
    static Map<State, StateReport> worst(Rig rig, Input input, Use use) {
        Map<State, StateReport> worst = new EnumMap<>(State.class);
        for (WorstCase.Build build : WorstCase.corners(rig, input)) {
            StateStudy study = new StateStudy(build.rig(), build.input(), use);
            for (State state : State.values()) {
                worst.merge(state, study.report(state), StateReport::worse);
            }
        }
        return worst;
    }

    /** Whether this one build keeps the limits, the likeliest to break them looked at first. */
    boolean keeps(CurrentLimits limits) {
        State[] states = State.values();
        for (int i = states.length - 1; i >= 0; i--) {
            StateReport report = report(states[i]);
            if (report.judgedAmps() > limits.of(states[i]) || states[i] == State.NORMAL && sinksTooMuch(input, report)) {
                return false;
            }
        }
        return true;
    }

    /** More than the sensor that the input was made for would have to sink. */
    static boolean sinksTooMuch(Input input, StateReport report) {
        return input instanceof PulledUpInput pulledUp && report.inputAmps() > pulledUp.mostSinkAmps();
    }

    /** The greatest of all that is seen in one state. */
    private final class Peaks {
        private final State state;
        private double clipAmps;
        private double rigAmps;
        private double inputAmps;
        private double jackVolts;
        private double jackAmps;
        private double seriesWatts;
        private double shuntWatts;
        private final double[] still = on.network.solve(Hold.INSTANT, rest, 0, 0).nodeVolts();

        Peaks(State state) {
            this.state = state;
        }

        void swing(Wiring wiring, double[] before, double peak, double pinVolts, boolean lasts) {
            look(wiring, before, peak, pinVolts, lasts);
            look(wiring, before, -peak, pinVolts, lasts);
        }

        void look(Wiring wiring, double[] before, double sourceVolts, double pinVolts, boolean lasts) {
            look(wiring, wiring.network.solve(Hold.INSTANT, before, sourceVolts, pinVolts).nodeVolts(), sourceVolts, lasts);
            if (wiring.network.hasShuntingStores()) {
                look(wiring, wiring.network.solve(Hold.MID_BAND, before, sourceVolts, pinVolts).nodeVolts(), sourceVolts,
                        lasts);
            }
        }

        private void look(Wiring wiring, double[] volts, double sourceVolts, boolean lasts) {
            leg(wiring.firstAmps(volts), wiring.firstAmps(still));
            leg(wiring.secondAmps(volts), wiring.secondAmps(still));
            double amps = (sourceVolts - volts[wiring.out]) / rig.output().outputOhms().nominal();
            jackAmps = Math.max(jackAmps, Math.abs(amps));
            jackVolts = Math.max(jackVolts, Math.abs(volts[wiring.jack]));
            if (lasts) {
                double ohms = rig.divider().seriesOhms().nominal();
                double across = volts[wiring.top] - volts[wiring.bottom];
                double shuntAmps = rig.divider().shuntOhms().map(shunt -> across / shunt.nominal()).orElse(0.0);
                shuntWatts = Math.max(shuntWatts, Math.abs(across * shuntAmps));
                boolean twin = input.differential() && !(rig.divider().coupling() instanceof Coupling.Transformer);
                double returnAmps = twin ? shuntAmps - wiring.secondAmps(volts) : 0;
                seriesWatts = Math.max(seriesWatts, Math.max(amps * amps, returnAmps * returnAmps) * ohms);
            }
        }

        private void leg(double amps, double stillAmps) {
            clipAmps = Math.max(clipAmps, Math.abs(amps));
            rigAmps = Math.max(rigAmps, Math.abs(amps - stillAmps));
            inputAmps = Math.max(inputAmps, Math.abs(stillAmps));
        }

        StateReport report() {
            return new StateReport(state, clipAmps, rigAmps, inputAmps, jackVolts, jackAmps, seriesWatts, shuntWatts);
        }
    }
}
