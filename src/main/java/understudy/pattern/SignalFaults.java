package understudy.pattern;

/** Faults of the whole signal, whatever the output plays. */
final class SignalFaults {
    private SignalFaults() {}

    static Fault dropout(FaultFields in, Fault.Place place) {
        double seconds = in.fields().quantity("length", FormatLimits.DROPOUT);
        return new Fault.Dropout(place, atDeg(in), seconds);
    }

    static Fault flicker(FaultFields in, Fault.Place place) {
        double perSecond = in.fields().quantity("rate", FormatLimits.FLICKER);
        double seconds = in.fields().quantity("length", FormatLimits.DROPOUT);
        if (perSecond * seconds >= 1) {
            in.fields().problem("length", "the contact would be open all the time",
                    "\"rate\" times \"length\" must stay below 1: open it less often, or for a shorter time");
        }
        return new Fault.Flicker(place, perSecond, seconds);
    }

    static Fault noise(FaultFields in, Fault.Place place) {
        return new Fault.Noise(place, in.fields().quantity("rms", FormatLimits.RMS));
    }

    static Fault hum(FaultFields in, Fault.Place place) {
        double rmsVolts = in.fields().quantity("rms", FormatLimits.RMS);
        return new Fault.Hum(place, rmsVolts, in.fields().quantity("frequency", FormatLimits.HUM));
    }

    static Fault spikes(FaultFields in, Fault.Place place) {
        double peakVolts = in.fields().quantity("peak", FormatLimits.VOLTS);
        double seconds = in.fields().quantity("length", FormatLimits.SPIKE);
        return new Fault.Spikes(place, peakVolts, seconds, atDeg(in));
    }

    static Fault swapped(FaultFields in, Fault.Place place) {
        return new Fault.SwappedPolarity(place);
    }

    static Fault level(FaultFields in, Fault.Place place) {
        return new Fault.Level(place, in.fields().quantity("strength", FormatLimits.LEVEL) / 100);
    }

    /** Where in the output's turn; below 360 deg. */
    static double atDeg(FaultFields in) {
        double atDeg = in.fields().quantity("at", FormatLimits.angle(360), 0);
        return atDeg == 360 ? 0 : atDeg;
    }
}
