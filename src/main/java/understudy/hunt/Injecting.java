package understudy.hunt;

import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.PinLimits;
import understudy.trace.Place;

/** On the way to a signal that plays: the pin is measured, then the rig is clipped on. */
final class Injecting {

    /** More than any meter at a sensor's pin shows. */
    private static final Range DIRECT = new Range(-1000, 1000, Unit.VOLT);

    private Injecting() {}

    /** Whether the clips are where an earlier session left them. */
    record StillClipped(Place place) implements Stage {

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            return Stage.asking("Are the clips still on at " + hunt.name(place) + " since then? yes or no:",
                    "The pin was measured before you stopped. If the clips came off since then, it is measured again.",
                    Stage.yesNo("they are on, and nobody touched them", "the pin is measured again"));
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            if (!(input instanceof HuntInput.Agreed agreed)) {
                throw Stage.notAsked();
            }
            return agreed.yes() ? turn.to(new Clipped(place, true)) : turn.goTo(place);
        }
    }

    /** The volts on the pin, before anything is clipped on. */
    record Pin(Place place) implements Stage {

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            return Stage.asking("Volts on the pin, like 0.2 V:",
                    "More than the module itself puts on the pin means a short, a wrong pin or a sensor that is still plugged in; it"
                            + " could harm the rig, the computer or the module.",
                    new Answers.As<>(new Answers.Number(DIRECT, "direct volts from the pin to ground"), HuntInput.PinVolts::new));
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            if (!(input instanceof HuntInput.PinVolts typed)) {
                throw Stage.notAsked();
            }
            PinLimits pins = turn.pins(place);
            Entry.PinMeasured pin = new Entry.PinMeasured(place, typed.volts());
            turn.keep(pin);
            if (!turn.hunt().pinAllowed(pin)) {
                return turn.say("REFUSED: allowed are " + pins.words() + ". " + pins.meaning(typed.volts()))
                        .say("Measure again when that is mended; or type other, or stop.").to(this);
            }
            return turn.say("Allowed: " + pins.words() + "." + pins.doubt(typed.volts()).map(doubt -> " " + doubt).orElse(""))
                    .to(new Clipped(place, false));
        }
    }

    /**
     * Only Enter makes it play.
     *
     * @param on whether the clips are on already
     */
    record Clipped(Place place, boolean on) implements Stage {

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            return Stage.enter(on ? "The clips are on at " + hunt.name(place) + ". Press Enter to play:"
                    : "Clip on: ground clip first, signal clip last. Then press Enter, and it plays:",
                    "The signal begins when you press Enter, and ends when you type what the display shows.");
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            if (!(input instanceof HuntInput.Done)) {
                throw Stage.notAsked();
            }
            return turn.play(place);
        }
    }
}
