package understudy.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

class UserFoldersTest {

    private static final Path HOME = Path.of("/home/kim");

    @Test
    void linuxFollowsTheXdgSpecification() {
        UserFolders plain = new UserFolders(Map.of(), "Linux", HOME);
        assertThat(plain.settings()).isEqualTo(Path.of("/home/kim/.config/understudy"));
        assertThat(plain.state()).isEqualTo(Path.of("/home/kim/.local/state/understudy"));
        assertThat(plain.data()).isEqualTo(Path.of("/home/kim/.local/share/understudy"));
        UserFolders moved =
                new UserFolders(Map.of("XDG_CONFIG_HOME", "/etc/kim", "XDG_STATE_HOME", "/var/kim"), "Linux", HOME);
        assertThat(moved.settings()).isEqualTo(Path.of("/etc/kim/understudy"));
        assertThat(moved.state()).isEqualTo(Path.of("/var/kim/understudy"));
    }

    @Test
    void relativePathsInTheVariablesAreIgnoredAsTheSpecificationAsks() {
        UserFolders folders = new UserFolders(Map.of("XDG_CONFIG_HOME", "config"), "Linux", HOME);
        assertThat(folders.settings()).isEqualTo(Path.of("/home/kim/.config/understudy"));
    }

    @Test
    void otherSystemsHaveTheirOwnPlaces() {
        assertThat(new UserFolders(Map.of(), "Mac OS X", HOME).settings())
                .isEqualTo(Path.of("/home/kim/Library/Application Support/understudy"));
        assertThat(new UserFolders(Map.of("APPDATA", "/roaming"), "Windows 11", HOME).settings())
                .isEqualTo(Path.of("/roaming/understudy"));
        assertThat(new UserFolders(Map.of(), "Windows 11", HOME).state())
                .isEqualTo(Path.of("/home/kim/AppData/Local/understudy"));
    }
}
