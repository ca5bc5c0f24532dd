package understudy.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import understudy.refusal.Refused;

/**
 * What the user keeps from one day to the next, in one SQLite file. Whatever was written is on the disk when the writing
 * method returns; a crash after that loses nothing, a crash before it leaves what was there. Several processes may have
 * it open; each writes in turn. Owned by one thread.
 */
public final class Store implements AutoCloseable {

    /** Changes of the file's layout, in order; one that has been released is never altered, only followed by another. */
    private static final List<String> MIGRATIONS = List.of("001-rigs.sql", "002-jobs.sql");
    /** SQLite's mark for whose file it is: "USTY". */
    private static final int APPLICATION_ID = 0x55535459;
    private static final int WAIT_FOR_OTHERS_MILLIS = 5000;

    final Connection connection;
    private final Path file;

    /** What is done with the database. */
    interface Work<T> {
        T on(Connection connection) throws SQLException;
    }

    private Store(Path file, String url) throws SQLException {
        this.file = file;
        connection = DriverManager.getConnection(url);
        try {
            begin();
        } catch (SQLException | RuntimeException e) {
            connection.close();
            throw e;
        }
    }

    /**
     * Opens the file, makes it where there is none, and brings one of an older version up to date. Where it may not be
     * written it can still be read.
     *
     * @throws Refused when that can't be; a file of a newer version, or of another program, is left as it is
     */
    public static Store open(Path file) {
        if (Files.exists(file) && !(Files.isWritable(file) && Files.isWritable(file.toAbsolutePath().getParent()))) {
            return openToRead(file);
        }
        try {
            makePrivately(file);
        } catch (IOException e) {
            throw Refused.setup(file.toAbsolutePath().getParent() + ": this folder, for what you keep, can't be made ("
                    + e.getMessage() + ")", "make it yourself, or set XDG_DATA_HOME to a place that may be written", e);
        }
        return open(file, "jdbc:sqlite:" + file.toAbsolutePath());
    }

    /** What the user keeps is nobody else's to read; a folder or a file that is there already keeps its mode. */
    private static void makePrivately(Path file) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        if (!folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.createDirectories(folder);
            return;
        }
        Files.createDirectories(folder, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
        try {
            Files.createFile(file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        } catch (FileAlreadyExistsException e) {
            // an empty file is a new database, and any other is looked at when it is opened
        }
    }

    /** For a file, or a folder, that may not be written. */
    static Store openToRead(Path file) {
        boolean settled = !Files.exists(file.resolveSibling(file.getFileName() + "-wal"));
        return open(file, "jdbc:sqlite:" + file.toAbsolutePath().toUri() + (settled ? "?immutable=1" : "?mode=ro"));
    }

    private static Store open(Path file, String url) {
        try {
            return new Store(file, url);
        } catch (SQLException e) {
            throw Trouble.with(file, e);
        }
    }

    private void begin() throws SQLException {
        pragma("busy_timeout = " + WAIT_FOR_OTHERS_MILLIS);
        int version = number("user_version");
        int owner = number("application_id");
        boolean empty = number("schema_version") == 0;
        if (!empty && owner != APPLICATION_ID) {
            throw Refused.setup(file.toString(), "this is not an Understudy database", "move it away, then a new one is made", null);
        }
        if (version > MIGRATIONS.size()) {
            throw Refused.setup(file.toString(), "this was written by a newer Understudy (layout " + version
                    + ", this one knows up to " + MIGRATIONS.size() + ")", "use the newer one; nothing was changed", null);
        }
        pragma("foreign_keys = ON");
        if (version < MIGRATIONS.size()) {
            pragma("journal_mode = WAL");
        }
        pragma("synchronous = FULL");
        if (version < MIGRATIONS.size()) {
            migrate();
        }
    }

    private void migrate() throws SQLException {
        inTransaction("BEGIN IMMEDIATE", on -> {
            // asked again, since another process may have been quicker
            for (int version = number("user_version"); version < MIGRATIONS.size(); version++) {
                try (Statement statement = on.createStatement()) {
                    statement.executeUpdate(script(MIGRATIONS.get(version)));
                }
                pragma("user_version = " + (version + 1));
            }
            pragma("application_id = " + APPLICATION_ID);
            return null;
        });
    }

    private static String script(String name) {
        try (InputStream in = Store.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException("the program is not whole: " + name + " can't be read", e);
        }
    }

    private int number(String pragma) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery("PRAGMA " + pragma)) {
            return row.getInt(1);
        }
    }

    private void pragma(String pragma) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA " + pragma);
        }
    }

    /** The rigs in it. */
    public Rigs rigs() {
        return new Rigs(this);
    }

    /** The jobs in it. */
    public Jobs jobs() {
        return new Jobs(this);
    }

    /** The learned scales in it. */
    public LearnedScales learnedScales() {
        return new LearnedScales(this);
    }

    <T> T read(Work<T> work) {
        try {
            return work.on(connection);
        } catch (SQLException e) {
            throw Trouble.with(file, e);
        }
    }

    /** All of it or nothing; on the disk when this returns. */
    <T> T write(Work<T> work) {
        try {
            return inTransaction("BEGIN IMMEDIATE", work);
        } catch (SQLException e) {
            throw Trouble.with(file, e);
        }
    }

    /** Reads with several commands what was there at one moment, though others write meanwhile. */
    <T> T atOneMoment(Work<T> work) {
        try {
            return inTransaction("BEGIN", work);
        } catch (SQLException e) {
            throw Trouble.with(file, e);
        }
    }

    private <T> T inTransaction(String begin, Work<T> work) throws SQLException {
        command(begin);
        try {
            T result = work.on(connection);
            command("COMMIT");
            return result;
        } catch (SQLException | RuntimeException e) {
            rollBack(e);
            throw e;
        }
    }

    private void rollBack(Exception why) {
        try {
            command("ROLLBACK");
        } catch (SQLException alreadyRolledBack) {
            why.addSuppressed(alreadyRolledBack);
        }
    }

    private void command(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Override
    public void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            throw Trouble.with(file, e);
        }
    }
}
