package understudy.cli;

import java.util.Optional;
import understudy.pattern.Profile;
import understudy.pattern.Profile.Step;
import understudy.wave.Fit;

/** Says when a signal's shape is too quick for its sample rate, with the number. */
final class SwingNote {

    private SwingNote() {}

    /** A refusal goes to {@code given}; a warning comes back. Judged at the highest speed that will surely be played. */
    static Optional<String> judge(Playable playable, Arguments given) {
        double fastestHz = fastestHz(playable);
        String warning = null;
        for (Fit fit : Fit.of(playable.pattern(), playable.rateHz(), fastestHz)) {
            String found = fit.output() + " keeps " + percent(fit.swingLeft()) + " of its swing at "
                    + playable.pattern().speed().print(fastestHz) + " and " + fit.rateHz() + " Hz; "
                    + (fit.betterHz() == 0 ? "no usual rate would do, so go slower" : "--rate " + fit.betterHz() + " would do");
            if (fit.isRefused()) {
                given.problem("--rate", "too little would be left of the signal", found);
            } else if (fit.isWarned()) {
                warning = warning == null ? found : warning + "\n" + found;
            }
        }
        return Optional.ofNullable(warning);
    }

    static String percent(double part) {
        return Math.round(part * 100) + " %";
    }

    private static double fastestHz(Playable playable) {
        Optional<Profile> profile = playable.pattern().profile();
        return profile.isEmpty()
                ? playable.startHz()
                : profile.get().steps().stream().mapToDouble(step -> fastestHz(step, playable.startHz())).max().orElseThrow();
    }

    private static double fastestHz(Step step, double startHz) {
        if (step instanceof Profile.Hold hold) {
            return hold.hz();
        } else if (step instanceof Profile.Ramp ramp) {
            return Math.max(Double.isNaN(ramp.fromHz()) ? startHz : ramp.fromHz(), ramp.toHz());
        } else if (step instanceof Profile.Sweep sweep) {
            return Math.max(Double.isNaN(sweep.fromHz()) ? startHz : sweep.fromHz(), sweep.toHz());
        } else if (step instanceof Profile.Crank crank) {
            return crank.hz() * (1 + crank.ripple());
        } else if (step instanceof Profile.Repeat repeat) {
            return repeat.steps().stream().mapToDouble(inner -> fastestHz(inner, startHz)).max().orElse(startHz);
        }
        return startHz;
    }
}
