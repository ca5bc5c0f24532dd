package understudy.pattern;

/** What reads the wheel. */
public sealed interface Sensor permits Hall, Reluctor {}
