package understudy.pattern;

import java.util.List;

/** A declared departure from the healthy pattern on one output. */
public sealed interface Fault {

    /** What all faults have. {@code on}: acts from the start, until the user switches it off. */
    record Place(String name, String output, When when, boolean on) {}

    Place place();

    /** The same fault, acting from the start. */
    default Fault switchedOn() {
        return at(new Place(place().name(), place().output(), place().when(), true));
    }

    /** The same fault at another place. */
    Fault at(Place other);

    /** Teeth that aren't there. */
    record MissingTooth(Place place, List<Integer> teeth) implements Fault {
        public MissingTooth {
            teeth = List.copyOf(teeth);
        }

        @Override
        public Fault at(Place other) {
            return new MissingTooth(other, teeth);
        }
    }

    /** Teeth that give only part (0 to 1) of their volts. */
    record WeakTooth(Place place, List<Integer> teeth, double strength) implements Fault {
        public WeakTooth {
            teeth = List.copyOf(teeth);
        }

        @Override
        public Fault at(Place other) {
            return new WeakTooth(other, teeth, strength);
        }
    }

    /** Teeth bent away: positive comes late. Degrees of the output's own turn. */
    record DisplacedTooth(Place place, List<Integer> teeth, double byDeg) implements Fault {
        public DisplacedTooth {
            teeth = List.copyOf(teeth);
        }

        @Override
        public Fault at(Place other) {
            return new DisplacedTooth(other, teeth, byDeg);
        }
    }

    /**
     * A wheel or ring off centre: once a turn the volts fall by {@code amplitude} (0 to below 1) of themselves and
     * recover, whole at {@code atDeg} and least half a turn later, and the teeth come late and early by
     * {@code timingDeg}, latest a quarter turn after {@code atDeg}.
     */
    record RunOut(Place place, double amplitude, double timingDeg, double atDeg) implements Fault {
        @Override
        public Fault at(Place other) {
            return new RunOut(other, amplitude, timingDeg, atDeg);
        }
    }

    /** The signal goes away for {@code seconds} at {@code atDeg} of every turn it acts in. */
    record Dropout(Place place, double atDeg, double seconds) implements Fault {
        @Override
        public Fault at(Place other) {
            return new Dropout(other, atDeg, seconds);
        }
    }

    /** A loose contact: opens {@code perSecond} times a second on average, each time for {@code seconds} on average. */
    record Flicker(Place place, double perSecond, double seconds) implements Fault {
        @Override
        public Fault at(Place other) {
            return new Flicker(other, perSecond, seconds);
        }
    }

    /** White noise, volts rms. */
    record Noise(Place place, double rmsVolts) implements Fault {
        @Override
        public Fault at(Place other) {
            return new Noise(other, rmsVolts);
        }
    }

    /** Mains hum, volts rms. */
    record Hum(Place place, double rmsVolts, double frequencyHz) implements Fault {
        @Override
        public Fault at(Place other) {
            return new Hum(other, rmsVolts, frequencyHz);
        }
    }

    /** Spikes of {@code peakVolts} (either sign), {@code seconds} wide at half height, at {@code atDeg} of every turn it acts in. */
    record Spikes(Place place, double peakVolts, double seconds, double atDeg) implements Fault {
        @Override
        public Fault at(Place other) {
            return new Spikes(other, peakVolts, seconds, atDeg);
        }
    }

    /** Two wires exchanged. */
    record SwappedPolarity(Place place) implements Fault {
        @Override
        public Fault at(Place other) {
            return new SwappedPolarity(other);
        }
    }

    /** All volts times {@code factor}, 0 or more. */
    record Level(Place place, double factor) implements Fault {
        @Override
        public Fault at(Place other) {
            return new Level(other, factor);
        }
    }

    /** A jumped belt: everything comes later by {@code byDeg} of the output's own turn. */
    record Shift(Place place, double byDeg) implements Fault {
        @Override
        public Fault at(Place other) {
            return new Shift(other, byDeg);
        }
    }
}
