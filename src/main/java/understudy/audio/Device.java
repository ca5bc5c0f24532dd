package understudy.audio;

/**
 * An audio device, known by what the system calls it; equal until it is plugged into another place.
 *
 * @param name        the system's short name
 * @param description the system's longer name
 * @param vendor      as the system gives it; may be empty
 * @param direction   plays or records
 * @param ordinal     1, or 2 and up for further devices that are alike in all of the above
 * @param isDefault   the one the system uses when none is named
 */
public record Device(
        String name, String description, String vendor, Direction direction, int ordinal, boolean isDefault) {

    /** Whether samples go to it or come from it. */
    public enum Direction {
        OUTPUT,
        INPUT
    }

    /** The same device, though it may have become the default, or ceased to be. */
    boolean isSame(Device other) {
        return name.equals(other.name) && description.equals(other.description) && vendor.equals(other.vendor)
                && direction == other.direction && ordinal == other.ordinal;
    }

    /** What to call it: its name, numbered from the second that bears it on. */
    public String label() {
        return ordinal == 1 ? name : numbered();
    }

    /** What means this one even where others bear the same name. */
    String numbered() {
        return name + " #" + ordinal;
    }
}
