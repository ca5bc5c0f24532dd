package understudy.rig;

import java.util.Arrays;

/**
 * A rig on an input as a network, every part at its nominal value. The audio device's ground counts as the module's
 * ground, the worse case, unless a transformer or capacitors in both legs part them.
 */
final class Wiring {

    /** How the clips stand. */
    enum Clips { ON, OFF, FAULT_AT_FIRST_PIN, FAULT_AT_SECOND_PIN, FAULT_ACROSS_PINS }

    /** Which capacitors count, besides those that couple. */
    enum Shunting {
        ALL,
        /** Not the lead: it only charges, within a microsecond, and would hide the currents of the first instant. */
        FILTERS,
        NONE
    }

    /** Of clips that hang in the air. */
    private static final double OPEN_OHMS = 1e12;
    /** Of a wire that touches where it should not. */
    private static final double SHORT_OHMS = 0.01;

    final Network network = new Network();
    final int out = network.node();
    final int jack;
    private final int afterSeries = network.node();
    final int top;
    final int bottom;
    final int firstPin;
    final int secondPin;
    final int firstSide;
    final int secondSide;
    final double legOhms;
    /** Behind the primary's winding, where a transformer's core sees its volts; 0 without one. */
    int core;
    /** Place of its inductance in the state. */
    int coreStore;
    double coreHenries;
    private final int rigStores;

    private final Input input;
    private final Shunting shunting;

    Wiring(Rig rig, Input input, Clips clips, Shunting shunting) {
        this.input = input;
        this.shunting = shunting;
        AudioOutput output = rig.output();
        network.source(out, output.outputOhms().nominal());
        jack = output.couplingFarads().isPresent() ? network.node() : out;
        output.couplingFarads().ifPresent(c -> network.capacitor(out, jack, c.nominal(), true));
        Divider divider = rig.divider();
        network.resistor(jack, afterSeries, divider.seriesOhms().nominal());

        bottom = input.differential() ? network.node() : 0;
        top = couple(divider);
        divider.shuntOhms().ifPresent(shunt -> network.resistor(top, bottom, shunt.nominal()));
        if (shunting == Shunting.ALL) {
            network.capacitor(top, bottom, rig.lead().farads(), false);
        }

        rigStores = network.stateSize();

        // One end of a two-wire lead on ground: both wires' resistance is in series with the pin.
        double wires = rig.lead().ohms().nominal() * (input.differential() ? 1 : 2);
        legOhms = clips == Clips.OFF ? OPEN_OHMS : wires;
        firstPin = network.node();
        network.resistor(top, firstPin, legOhms);
        secondPin = input.differential() ? network.node() : 0;
        if (input.differential()) {
            network.resistor(bottom, secondPin, legOhms);
        }
        connectPins();
        firstSide = comparatorSide(firstPin);
        secondSide = input.differential() ? comparatorSide(secondPin) : 0;
        if (clips == Clips.FAULT_AT_FIRST_PIN) {
            network.fault(firstPin, 0, SHORT_OHMS);
        } else if (clips == Clips.FAULT_AT_SECOND_PIN) {
            network.fault(secondPin, 0, SHORT_OHMS);
        } else if (clips == Clips.FAULT_ACROSS_PINS) {
            network.fault(firstPin, secondPin, SHORT_OHMS);
        }
    }

    /** The state before the clips touch: the input at rest, and the rig, in which nothing drives a current, empty. */
    static double[] beforeTouch(Rig rig, Input input, Shunting shunting) {
        Wiring apart = new Wiring(rig, input, Clips.OFF, shunting);
        double[] state = apart.network.solve(
                Network.Hold.SETTLED, new double[apart.network.stateSize()], 0, 0).state();
        Arrays.fill(state, 0, apart.rigStores, 0);
        return state;
    }

    /** Returns the node behind the coupling. */
    private int couple(Divider divider) {
        if (divider.coupling() instanceof Coupling.Transformer transformer) {
            core = network.node();
            int secondary = network.node();
            int behind = network.node();
            network.resistor(afterSeries, core, transformer.primaryOhms().nominal());
            coreStore = network.stateSize();
            coreHenries = transformer.henries().nominal();
            network.inductor(core, 0, coreHenries);
            network.transformer(core, secondary, bottom, transformer.ratio().nominal());
            network.resistor(secondary, behind, transformer.secondaryOhms().nominal());
            return behind;
        }
        if (input.differential()) {
            double ohms = divider.seriesOhms().nominal();
            if (divider.coupling() instanceof Coupling.Capacitor capacitor) {
                int inReturn = network.node();
                network.resistor(0, inReturn, ohms);
                network.capacitor(inReturn, bottom, capacitor.farads().nominal(), true);
            } else {
                network.resistor(0, bottom, ohms);
            }
        }
        if (divider.coupling() instanceof Coupling.Capacitor capacitor) {
            int behind = network.node();
            network.capacitor(afterSeries, behind, capacitor.farads().nominal(), true);
            return behind;
        }
        return afterSeries;
    }

    private void connectPins() {
        if (input instanceof ReluctorInput reluctor) {
            network.resistor(firstPin, secondPin, reluctor.inputOhms().nominal());
        } else if (input instanceof PulledUpInput pulledUp) {
            network.rail(firstPin, pulledUp.pullUpOhms().nominal(), pulledUp.supplyVolts().nominal());
        } else if (input instanceof ResistiveInput resistive) {
            network.resistor(firstPin, 0, resistive.inputOhms().nominal());
        }
    }

    private int comparatorSide(int pin) {
        FrontEnd frontEnd = input.frontEnd();
        int side = network.node();
        network.resistor(pin, side, frontEnd.seriesOhms().nominal());
        if (input instanceof ReluctorInput reluctor) {
            network.rail(side, reluctor.biasOhms().nominal(), reluctor.biasVolts().nominal());
        }
        if (shunting != Shunting.NONE) {
            frontEnd.filterFarads().ifPresent(c -> network.capacitor(side, 0, c.nominal(), false));
        }
        frontEnd.clamp().ifPresent(clamp -> {
            network.clamp(side, clamp.lowVolts(), false, clamp.onOhms());
            network.clamp(side, clamp.highVolts(), true, clamp.onOhms());
        });
        return side;
    }

    /** From the rig through the clip at the first pin. */
    double firstAmps(double[] nodeVolts) {
        return (nodeVolts[top] - nodeVolts[firstPin]) / legOhms;
    }

    /** From the rig through the clip at the second pin; 0 when that is ground. */
    double secondAmps(double[] nodeVolts) {
        return secondPin == 0 ? 0 : (nodeVolts[bottom] - nodeVolts[secondPin]) / legOhms;
    }

    /** With which the comparator compares its first side, on top of its second side. */
    double referenceVolts() {
        return input instanceof ReluctorInput reluctor ? reluctor.referenceVolts() : 0;
    }
}
