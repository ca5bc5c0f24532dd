package understudy.pattern;

import java.util.Arrays;
import java.util.List;

/** What can hurt people or machines when a signal is put into a circuit, and what is to be done about it. */
public enum Hazard {
    CRANK("crank", Scope.CIRCUIT, "Crank and cam signals with the ignition on",
            "The fuel pump runs as long as pulses come; injectors and ignition coils fire. Fuel washes the oil off "
                    + "the cylinder walls, collects as vapour, and can catch fire.",
            "Disable the fuel pump, the injectors and the coils first. Play in short bursts. Air the place, keep "
                    + "sparks away, and stop when you smell fuel."),
    WHEEL_SPEED("wheel-speed", Scope.CIRCUIT, "Wheel-speed signals while the vehicle stands",
            "The brake control may test itself: its pump and valves run and pressure moves in the brakes. It may "
                    + "store codes for speeds that can't be.",
            "Have nothing open on the hydraulics and nobody's foot on the pedal. Where you can, play the sister wheel "
                    + "at the same speed. Clear the codes afterwards."),
    ROAD_SPEED("road-speed", Scope.CIRCUIT, "Speed signals of vehicle and gearbox",
            "The vehicle believes that it drives: door locks, gearbox, steering assist and parking brake may act, and "
                    + "the odometer may count.",
            "Put the gearbox in park or neutral, chock the wheels, and keep hands and feet off what may move."),
    AIRBAGS("airbags", Scope.ALWAYS, "Airbags and belt pretensioners",
            "They store energy, and fire from very little.",
            "Never connect to any pin of that system, nor to its connectors, which are usually yellow."),
    ELECTRIC_DRIVE("electric-drive", Scope.ALWAYS, "Electric and hybrid vehicles",
            "More than 60 V direct voltage, which kills; and the vehicle may move without a sound.",
            "Work only on 12 V sensor inputs, with the drive system switched off. Never touch orange cabling."),
    ACTUATORS("actuators", Scope.ALWAYS, "Coil drivers, injectors, motors, valves: anything that acts",
            "The rig can neither drive such a circuit nor survive it, and a coil's kick reaches hundreds of volts.",
            "The rig must not be connected to ignition or actuator circuits. Connect it to sensor inputs only."),
    MAINS_COMPUTER("mains-computer", Scope.ALWAYS, "A computer on mains power",
            "Its case floats or is earthed: leakage and ground loops run through the clips and the module.",
            "Run it on its battery, or put an isolation transformer in between. Ground clip first, signal clip last; "
                    + "take them off the other way round."),
    PINS_UNDER_VOLTAGE("pins-under-voltage", Scope.ALWAYS, "Pins under voltage",
            "A sensor pin may be pulled up to 5 to 12 V, or lie at the battery's 12 to 16 V, and relays that switch "
                    + "add far more for a moment.",
            "Measure the pin before each time you clip on. Never crank or run the engine with the rig clipped on."),
    CURRENTS("currents", Scope.ALWAYS, "Current into the module's pins",
            "The protection inside an input is rated for a few thousandths of an ampere; more damages the module, at "
                    + "once or later.",
            "Build the divider so that no more than 1 mA flows through a pin in normal use, and no more than 5 mA in "
                    + "any single fault, a short to ground or to 16 V battery included. A series capacitor never "
                    + "replaces a resistor."),
    RULES("rules", Scope.ALWAYS, "Rules where you work",
            "Local codes, the maker's instructions and licensed practice say who may do this work, and how.",
            "They come first, before anything that Understudy says. If you may not do this work, or are not sure, don't."),
    UNCHECKED("unchecked", Scope.WITHOUT_RIG, "NOTHING IS CHECKED: no rig is named",
            "The current into the pins and the volts at them are not known. They may be more than a module stands.",
            "Name your rig and the module's input, so that limits are computed and kept. Without them connect the output to "
                    + "an instrument only, never to a module.");

    private enum Scope { CIRCUIT, ALWAYS, WITHOUT_RIG }

    private final String key;
    private final Scope scope;
    private final String title;
    private final String whatCanHappen;
    private final String whatToDo;

    Hazard(String key, Scope scope, String title, String whatCanHappen, String whatToDo) {
        this.key = key;
        this.scope = scope;
        this.title = title;
        this.whatCanHappen = whatCanHappen;
        this.whatToDo = whatToDo;
    }

    /** Those that a pattern names when they come with its kind of circuit. */
    public static List<Hazard> named() {
        return Arrays.stream(values()).filter(hazard -> hazard.scope == Scope.CIRCUIT).toList();
    }

    /** Those that come with every circuit, and are always shown. */
    public static List<Hazard> general() {
        return Arrays.stream(values()).filter(hazard -> hazard.scope == Scope.ALWAYS).toList();
    }

    /** How a pattern file and a script name it. */
    public String key() {
        return key;
    }

    /** What it is about, a line without a full stop. */
    public String title() {
        return title;
    }

    /** One or more sentences. */
    public String whatCanHappen() {
        return whatCanHappen;
    }

    /** One or more sentences. */
    public String whatToDo() {
        return whatToDo;
    }
}
