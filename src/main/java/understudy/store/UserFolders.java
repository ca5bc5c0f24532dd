package understudy.store;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;

/**
 * Where the user's own files live, by the custom of the system: the XDG Base Directory Specification on Linux and
 * other Unixes, Library on macOS, AppData on Windows. Folders are named here, not made.
 */
public final class UserFolders {

    private static final String NAME = "understudy";

    private final Map<String, String> env;
    private final String system;
    private final Path home;

    /**
     * @param env    environment variables
     * @param system what Java calls the operating system ({@code os.name})
     * @param home   the user's home folder
     */
    public UserFolders(Map<String, String> env, String system, Path home) {
        this.env = env;
        this.system = system.toLowerCase(Locale.ROOT);
        this.home = home;
    }

    /** For what the user decided. */
    public Path settings() {
        return folder("XDG_CONFIG_HOME", ".config", "Library/Application Support", "APPDATA", "AppData/Roaming");
    }

    /** For what the user made and would miss: rigs, calibrations, jobs. */
    public Path data() {
        return folder("XDG_DATA_HOME", ".local/share", "Library/Application Support", "APPDATA", "AppData/Roaming");
    }

    /** For notes that may be thrown away, such as the details of a defect. */
    public Path state() {
        return folder("XDG_STATE_HOME", ".local/state", "Library/Logs", "LOCALAPPDATA", "AppData/Local");
    }

    private Path folder(String xdg, String unix, String mac, String windowsVariable, String windows) {
        if (system.startsWith("windows")) {
            return absolute(windowsVariable, windows);
        }
        if (system.startsWith("mac")) {
            return home.resolve(mac).resolve(NAME);
        }
        return absolute(xdg, unix);
    }

    /** The XDG specification says that a relative path in these variables is invalid and must be ignored. */
    private Path absolute(String variable, String underHome) {
        String value = env.getOrDefault(variable, "");
        boolean usable = !value.isEmpty() && Path.of(value).isAbsolute();
        return (usable ? Path.of(value) : home.resolve(underHome)).resolve(NAME);
    }
}
