package understudy.pattern;

/** What an output plays. */
public sealed interface Signal permits WheelSignal, Tone, Bursts, DrawnCycle {}
