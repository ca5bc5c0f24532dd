package understudy.store;

/**
 * An audio device, as it is recognised again.
 *
 * @param name        the system's short name
 * @param description the system's longer name
 * @param vendor      as the system gives it; may be empty
 * @param ordinal     1, or 2 and up for further devices that are alike in all of the above
 */
public record DeviceIdentity(String name, String description, String vendor, int ordinal) {}
