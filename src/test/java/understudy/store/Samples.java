package understudy.store;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import understudy.rig.AudioOutput;
import understudy.rig.Coupling;
import understudy.rig.CurrentLimits;
import understudy.rig.Divider;
import understudy.rig.Lead;
import understudy.rig.Spread;

/** Rigs in which no two numbers are alike, so that columns that change places are seen. */
final class Samples {

    static final Instant MADE = Instant.parse("2026-03-01T12:00:00Z");

    private Samples() {}

    static AudioOutput output(double volts) {
        return new AudioOutput(new Spread(volts, 0.21), new Spread(101, 0.11), Optional.of(new Spread(12e-6, 0.13)), true, 2.25);
    }

    static NamedRig withTransformer(String name) {
        return new NamedRig(name, Optional.of(new DeviceIdentity("USB", "a card", "nobody", 2)), output(1.4), false,
                Optional.of(new Divider(new Spread(10e3, 0.01), Optional.of(new Spread(1.8e3, 0.02)),
                        new Coupling.Transformer(new Spread(1.1, 0.03), new Spread(2.5, 0.3), new Spread(90, 0.04),
                                new Spread(95, 0.05), 0.006))),
                new Lead(new Spread(0.2, 0.06), 3e-10), new CurrentLimits(1e-3, 12e-3, Optional.of("a bench module, spare")),
                "second shelf; Ωhm's \"box\"", MADE, MADE.plusSeconds(7));
    }

    static NamedRig withCapacitor(String name) {
        return new NamedRig(name, Optional.empty(), new AudioOutput(new Spread(1.2, 0.2), new Spread(50, 0.5), Optional.empty(),
                false, 0), false, Optional.of(new Divider(new Spread(22e3, 0.05), Optional.empty(),
                        new Coupling.Capacitor(new Spread(4.7e-6, 0.2)))),
                Lead.USUAL, CurrentLimits.STANDARD, "", MADE, MADE);
    }

    static NamedRig straight(String name) {
        NamedRig other = withCapacitor(name);
        return other.withDivider(new Divider(new Spread(18e3, 0.01), Optional.of(new Spread(4.7e3, 0.01)), new Coupling.Direct()),
                CurrentLimits.lowered(5e-4, 2e-3));
    }

    static NamedRig unbuilt(String name) {
        NamedRig other = withCapacitor(name);
        return new NamedRig(name, other.device(), other.output(), false, Optional.empty(), other.lead(), other.limits(), "",
                MADE, MADE);
    }

    static Calibration good(double volts) {
        return new Calibration(MADE.plusSeconds(60), "meter", Optional.of(output(volts)),
                Map.of("meter", "pocket meter", "volume", "100 %"), Map.of("latencySeconds", 0.0312, "sinadDb", 87.5), "");
    }

    static Calibration failed() {
        return new Calibration(MADE.plusSeconds(120), "loopback", Optional.empty(), Map.of("cable", "patch"),
                Map.of("peakOfFullScale", 0.0), "silence: no cable");
    }
}
