package understudy.guide;

import java.awt.Desktop;
import java.awt.GraphicsEnvironment;
import java.io.IOException;
import java.nio.file.Path;

/** The user's own web browser. */
public final class Browser {

    private Browser() {}

    /** Whether one could be asked to show this file. */
    public static boolean show(Path file) {
        try {
            if (GraphicsEnvironment.isHeadless() || !Desktop.isDesktopSupported()
                    || !Desktop.getDesktop().isSupported(Desktop.Action.BROWSE)) {
                return false;
            }
            Desktop.getDesktop().browse(file.toUri());
            return true;
        } catch (IOException | UnsatisfiedLinkError | NoClassDefFoundError e) {
            // a Java without a desktop says so in one of these ways
            return false;
        }
    }
}
