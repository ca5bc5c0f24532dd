package understudy.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.refusal.Refused;

/** The file itself: made, found damaged, foreign, newer, full, read-only, shared, killed. */
class StoreTest {

    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void nameFile() {
        file = folder.resolve("deeper/down/understudy.db");
    }

    private void sql(String command) {
        try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = other.createStatement()) {
            statement.executeUpdate(command);
        } catch (SQLException e) {
            throw new AssertionError(e);
        }
    }

    private void makeWith(String... names) {
        try (Store store = Store.open(file)) {
            for (String name : names) {
                store.rigs().make(Samples.straight(name));
            }
        }
    }

    @Test
    void itSyncsEveryWriteAndKeepsItsKeys() throws SQLException {
        try (Store store = Store.open(file); Statement statement = store.connection.createStatement()) {
            assertThat(statement.executeQuery("PRAGMA journal_mode").getString(1)).isEqualTo("wal");
            assertThat(statement.executeQuery("PRAGMA synchronous").getInt(1)).as("FULL").isEqualTo(2);
            assertThat(statement.executeQuery("PRAGMA foreign_keys").getInt(1)).isEqualTo(1);
        }
        // and again when it is not new
        try (Store store = Store.open(file); Statement statement = store.connection.createStatement()) {
            assertThat(statement.executeQuery("PRAGMA journal_mode").getString(1)).isEqualTo("wal");
            assertThat(statement.executeQuery("PRAGMA synchronous").getInt(1)).isEqualTo(2);
            assertThat(statement.executeQuery("PRAGMA foreign_keys").getInt(1)).isEqualTo(1);
        }
    }

    @Test
    void aNewerFileIsLeftAsItIs() throws IOException {
        makeWith("bench");
        sql("PRAGMA user_version = 99");
        byte[] before = Files.readAllBytes(file);
        assertThatThrownBy(() -> Store.open(file)).isInstanceOf(Refused.class).hasMessage(file
                + ": this was written by a newer Understudy (layout 99, this one knows up to 2); use the newer one; nothing was"
                + " changed");
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void anotherProgramsFileIsLeftAsItIs() throws IOException {
        Files.createDirectories(file.getParent());
        sql("CREATE TABLE something (a)");
        byte[] before = Files.readAllBytes(file);
        assertThatThrownBy(() -> Store.open(file))
                .hasMessage(file + ": this is not an Understudy database; move it away, then a new one is made");
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
        Files.writeString(file, "Dear diary, today I went to the bench.".repeat(50));
        assertThatThrownBy(() -> Store.open(file))
                .hasMessage(file + ": this is not an Understudy database; move it away, then a new one is made");
        assertThat(Files.readString(file)).startsWith("Dear diary");
    }

    @Test
    void aDamagedFileIsSaidToBe() throws IOException {
        makeWith("bench", "table");
        byte[] bytes = Files.readAllBytes(file);
        java.util.Arrays.fill(bytes, 4096, bytes.length, (byte) 0x5a); // all but the page that tells what it is
        Files.write(file, bytes);
        assertThatThrownBy(() -> {
            try (Store store = Store.open(file)) {
                store.rigs().all();
            }
        }).isInstanceOf(Refused.class)
                .hasMessage(file + ": this database is damaged; put back a copy of it, or move it away and a new one is made");
    }

    @Test
    void aFullDiskLosesNothing() throws SQLException {
        makeWith("bench");
        try (Store store = Store.open(file); Statement statement = store.connection.createStatement()) {
            // SQLite's own way of having no room: the file may not grow
            int pages = statement.executeQuery("PRAGMA page_count").getInt(1);
            statement.execute("PRAGMA max_page_count = " + pages);
            NamedRig large = Samples.straight("large");
            assertThatThrownBy(() -> store.rigs().make(new NamedRig("large", large.device(), large.output(), false,
                    large.divider(), large.lead(), large.limits(), "x".repeat(100_000), Samples.MADE, Samples.MADE)))
                    .isInstanceOf(Refused.class)
                    .hasMessage(file + ": the disk is full; nothing was changed; make room, then do it again");
            assertThat(store.rigs().all()).isEqualTo(java.util.List.of(Samples.straight("bench")));
            statement.execute("PRAGMA max_page_count = 100000");
            store.rigs().make(large); // the store still works once there is room
        }
        try (Store store = Store.open(file)) {
            assertThat(store.rigs().all()).hasSize(2);
        }
    }

    @Test
    void whatMayNotBeWrittenCanStillBeRead() {
        makeWith("bench");
        try (Store store = Store.openToRead(file)) {
            assertThat(store.rigs().find("bench")).isEqualTo(Samples.straight("bench"));
            assertThatThrownBy(() -> store.rigs().remove("bench")).isInstanceOf(Refused.class)
                    .hasMessage(file + ": this file, or its folder, may not be written; nothing was changed; give yourself the"
                            + " right to write there");
        }
    }

    @Test
    void itCanBeReadWhileAnotherHasNotSettled() {
        makeWith("bench");
        try (Store writing = Store.open(file)) {
            writing.rigs().make(Samples.straight("table"));
            try (Store reading = Store.openToRead(file)) {
                assertThat(reading.rigs().all()).hasSize(2);
            }
        }
    }

    @Test
    void aPlaceThatCantBeIsNamed() throws IOException {
        Files.writeString(folder.resolve("deeper"), "a file where a folder should be");
        assertThatThrownBy(() -> Store.open(file)).isInstanceOf(Refused.class)
                .hasMessageStartingWith(file.getParent() + ": this folder, for what you keep, can't be made (")
                .hasMessageEndingWith("); make it yourself, or set XDG_DATA_HOME to a place that may be written");
        Path aFolder = folder.resolve("understudy.db");
        Files.createDirectory(aFolder);
        assertThatThrownBy(() -> Store.open(aFolder)).isInstanceOf(Refused.class)
                .hasMessageStartingWith(aFolder + ": this file can't be opened; ");
    }

    @Test
    void twoWriteInTurn() throws Exception {
        makeWith();
        Thread[] writers = new Thread[2];
        for (int w = 0; w < writers.length; w++) {
            String mine = "rig" + w + "-";
            writers[w] = new Thread(() -> {
                try (Store store = Store.open(file)) {
                    for (int i = 0; i < 20; i++) {
                        store.rigs().make(Samples.straight(mine + i));
                    }
                }
            });
            writers[w].start();
        }
        for (Thread writer : writers) {
            writer.join();
        }
        try (Store store = Store.open(file)) {
            assertThat(store.rigs().all()).hasSize(40);
        }
    }

    /** Writes rigs, and says each once it is kept, until it is killed. */
    static final class Writer {
        public static void main(String[] args) {
            try (Store store = Store.open(Path.of(args[0]))) {
                for (int i = 0; ; i++) {
                    store.rigs().make(Samples.straight("rig" + i));
                    System.out.println(i);
                }
            }
        }
    }

    @Test
    void whatWasAcknowledgedOutlivesAKill() throws Exception {
        Process writer = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp", System.getProperty("java.class.path"), Writer.class.getName(), file.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT).start();
        var said = writer.inputReader();
        int last = -1;
        while (last < 30) {
            last = Integer.parseInt(said.readLine());
        }
        writer.toHandle().destroyForcibly(); // not by the process itself, which would throw away what it still said
        assertThat(writer.waitFor(20, TimeUnit.SECONDS)).isTrue();
        for (String line = said.readLine(); line != null && line.matches("\\d+"); line = said.readLine()) {
            last = Integer.parseInt(line);
        }
        try (Store store = Store.open(file)) {
            // the one after the last said may be kept too, but none is half there
            assertThat(store.rigs().all()).hasSizeBetween(last + 1, last + 2)
                    .allSatisfy(rig -> assertThat(rig).isEqualTo(Samples.straight(rig.name())));
        }
    }
}
