package understudy.view;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import understudy.audio.PlayerStatus;
import understudy.pattern.Pattern;
import understudy.quantity.NumberText;
import understudy.quantity.Unit;
import understudy.wave.Fit;
import understudy.wave.Hand;
import understudy.wave.OutputFacts;

/** What a person sees while it plays, in one line. */
public final class StatusLine {

    private final Pattern pattern;
    private final int rateHz;
    private final List<OutputFacts> facts;
    private double swingAtHz = Double.NaN;
    private double swingLeft;

    public StatusLine(Pattern pattern, int rateHz) {
        this.pattern = pattern;
        this.rateHz = rateHz;
        this.facts = OutputFacts.of(pattern);
    }

    /** @param speedHz turns per second at this moment */
    public String text(double speedHz, Hand hand, PlayerStatus status) {
        List<String> parts = new ArrayList<>();
        if (status.state() == PlayerStatus.State.STALLED) {
            parts.add("THE DEVICE TAKES NOTHING");
        }
        parts.add(pattern.speed().print(speedHz));
        parts.add("level " + SignalWords.percent(hand.level()));
        if (swingLeft(speedHz) < Fit.PLENTY) {
            parts.add("swing " + SignalWords.percent(swingLeft(speedHz)));
        }
        parts.add("underruns " + status.underruns());
        String faults = IntStream.range(0, pattern.faults().size())
                .filter(i -> (hand.faultsOn() >> i & 1) == 1)
                .mapToObj(i -> pattern.faults().get(i).place().name()).collect(Collectors.joining(", "));
        if (!pattern.faults().isEmpty()) {
            parts.add("faults " + (faults.isEmpty() ? "none" : faults));
        }
        // last, for it is what a narrow terminal can cut off with the least loss
        parts.add(facts.stream().map(output -> name(output) + NumberText.of(output.eventRateHz(speedHz), Unit.HERTZ))
                .collect(Collectors.joining(", ")));
        return String.join(" | ", parts);
    }

    /** Worked out again only when the speed has changed. */
    private double swingLeft(double speedHz) {
        if (speedHz != swingAtHz) {
            swingAtHz = speedHz;
            swingLeft = Fit.leastSwing(pattern, rateHz, speedHz);
        }
        return swingLeft;
    }

    private String name(OutputFacts output) {
        return facts.size() == 1 ? "events " : output.output() + " ";
    }

    /** Of a speed that is typed as a number alone. */
    public String speedUnit() {
        return pattern.speed().unit().symbol();
    }
}
