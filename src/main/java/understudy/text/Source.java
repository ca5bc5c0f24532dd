package understudy.text;

/**
 * A file that a person wrote, as it was read.
 *
 * @param fileName as the person named it
 * @param text     all of it
 */
public record Source(String fileName, String text) {

    /** The name that what it describes is called by: the file's name without folder and ending. */
    public String id() {
        String name = fileName.substring(Math.max(fileName.lastIndexOf('/'), fileName.lastIndexOf('\\')) + 1);
        return name.endsWith(".yaml") || name.endsWith(".yml") ? name.substring(0, name.lastIndexOf('.')) : name;
    }
}
