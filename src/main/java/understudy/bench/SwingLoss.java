package understudy.bench;

import java.util.Locale;
import understudy.pattern.Speed;
import understudy.refusal.Control;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Remedy;
import understudy.wave.Fit;

/** An output whose shape is too quick for its sample rate, with the number. */
public record SwingLoss(Fit fit, Speed speed) {

    /** Whether too little is left to play. */
    public boolean isRefused() {
        return fit.isRefused();
    }

    public Refusal refusal() {
        return new Refusal(Location.of(Control.RATE), "too little would be left of the signal", warning());
    }

    /** What is left, and what would do. */
    public Remedy warning() {
        Remedy found = Remedy.of(String.format(Locale.ROOT, "%s keeps %d %% of its swing at %s and %d Hz; ",
                fit.output(), Math.round(100 * fit.swingLeft()), speed.print(fit.speedHz()), fit.rateHz()));
        return fit.betterHz() == 0 ? found.then("no usual rate would do, so go slower")
                : found.set(Control.RATE, String.valueOf(fit.betterHz())).then(" would do");
    }
}
