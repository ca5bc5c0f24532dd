package understudy.pattern;

/** A wheel and the sensor that reads it. */
public record WheelSignal(Wheel wheel, Sensor sensor) implements Signal {}
