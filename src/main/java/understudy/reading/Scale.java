package understudy.reading;

import java.util.List;

/**
 * How a module makes a number of a frequency: a strictly monotone function from events a second, as the module counts
 * them, to the base unit of what it shows (km/h, rpm, Hz, g/s, Pa). A wheel with missing teeth counts its positions,
 * since a module fills its gap in: 36-1 has 36 events a turn.
 */
public sealed interface Scale {

    /** What is shown at so many events a second, 0 or more; NaN where this scale says nothing. */
    double base(double frequencyHz);

    /** Events a second at which {@code base} is shown; NaN where none does. */
    double frequencyHz(double base);

    /** A scale through zero and with one factor. */
    sealed interface Proportional extends Scale {
        double basePerHz();

        @Override
        default double base(double frequencyHz) {
            return frequencyHz >= 0 ? frequencyHz * basePerHz() : Double.NaN;
        }

        @Override
        default double frequencyHz(double base) {
            return base >= 0 ? base / basePerHz() : Double.NaN;
        }
    }

    /**
     * Road speed, in km/h, from teeth on a wheel or on a shaft before the axle.
     *
     * @param teeth       events in one turn of the ring
     * @param axleRatio   turns of the ring for one turn of the wheel; 1 for a ring on the wheel
     * @param rollsMetres road travelled in one turn of the wheel
     */
    record Rolling(double teeth, double axleRatio, double rollsMetres) implements Proportional {
        public Rolling {
            above0(teeth, axleRatio, rollsMetres);
        }

        @Override
        public double basePerHz() {
            return 3.6 * rollsMetres / (teeth * axleRatio);
        }
    }

    /** Road speed, in km/h, from so many events a kilometre. */
    record PulsesPerKm(double pulses) implements Proportional {
        /** The international mile. */
        static final double KM_PER_MILE = 1.609344;

        public PulsesPerKm {
            above0(pulses);
        }

        static PulsesPerKm ofMile(double pulsesPerMile) {
            return new PulsesPerKm(pulsesPerMile / KM_PER_MILE);
        }

        @Override
        public double basePerHz() {
            return 3600 / pulses;
        }
    }

    /** Engine speed, in rpm, from so many events a turn of the crank, whole or not. */
    record EventsPerTurn(double events) implements Proportional {
        public EventsPerTurn {
            above0(events);
        }

        /** One event a power stroke: a four-stroke engine has one for every second turn and cylinder. */
        static EventsPerTurn ofCylinders(int cylinders) {
            return new EventsPerTurn(cylinders / 2.0);
        }

        @Override
        public double basePerHz() {
            return 60 / events;
        }
    }

    /** A straight line, as a learned scale is: {@code base = offset + basePerHz * frequency}; the slope is not 0. */
    record Line(double basePerHz, double offsetBase) implements Scale {
        public Line {
            if (!Double.isFinite(basePerHz) || basePerHz == 0 || !Double.isFinite(offsetBase)) {
                throw new IllegalArgumentException("a line needs a slope other than 0, got " + basePerHz);
            }
        }

        @Override
        public double base(double frequencyHz) {
            return frequencyHz >= 0 ? offsetBase + basePerHz * frequencyHz : Double.NaN;
        }

        @Override
        public double frequencyHz(double base) {
            double hz = (base - offsetBase) / basePerHz;
            return hz >= 0 ? hz : Double.NaN;
        }
    }

    /** Straight lines between points of rising frequency, whose values all rise or all fall; nothing beyond its ends. */
    record Points(List<Point> points) implements Scale {

        public record Point(double frequencyHz, double base) {}

        public Points {
            points = List.copyOf(points);
            if (points.size() < 2) {
                throw new IllegalArgumentException("a table needs at least two points");
            }
            double direction = Math.signum(points.get(1).base() - points.get(0).base());
            for (int i = 1; i < points.size(); i++) {
                Point before = points.get(i - 1);
                Point here = points.get(i);
                if (!(here.frequencyHz() > before.frequencyHz()) || direction == 0
                        || Math.signum(here.base() - before.base()) != direction) {
                    throw new IllegalArgumentException("a table's frequencies rise, and its values all rise or all fall");
                }
            }
        }

        double spanBase() {
            return Math.abs(points.get(points.size() - 1).base() - points.get(0).base());
        }

        @Override
        public double base(double frequencyHz) {
            for (int i = 1; i < points.size(); i++) {
                Point low = points.get(i - 1);
                Point high = points.get(i);
                if (frequencyHz >= low.frequencyHz() && frequencyHz <= high.frequencyHz()) {
                    double part = (frequencyHz - low.frequencyHz()) / (high.frequencyHz() - low.frequencyHz());
                    return low.base() + part * (high.base() - low.base());
                }
            }
            return Double.NaN;
        }

        @Override
        public double frequencyHz(double base) {
            for (int i = 1; i < points.size(); i++) {
                Point low = points.get(i - 1);
                Point high = points.get(i);
                double part = (base - low.base()) / (high.base() - low.base());
                if (part >= 0 && part <= 1) {
                    return low.frequencyHz() + part * (high.frequencyHz() - low.frequencyHz());
                }
            }
            return Double.NaN;
        }
    }

    private static void above0(double... values) {
        for (double value : values) {
            if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("teeth, ratios, lengths and counts must be above 0, got " + value);
            }
        }
    }
}
