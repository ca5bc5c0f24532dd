package understudy.store;

import java.nio.file.Path;
import java.sql.SQLException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import understudy.refusal.Refused;

/** What SQLite reports, in words, with what to do. */
final class Trouble {

    private static final int PRIMARY_CODE = 0xff; // what is above tells the same trouble apart more finely

    private Trouble() {}

    static Refused with(Path file, SQLException e) {
        int code = e instanceof SQLiteException sqlite ? sqlite.getResultCode().code & PRIMARY_CODE : e.getErrorCode();
        String what;
        if (code == SQLiteErrorCode.SQLITE_FULL.code) {
            what = "the disk is full; nothing was changed; make room, then do it again";
        } else if (code == SQLiteErrorCode.SQLITE_READONLY.code) {
            what = "this file, or its folder, may not be written; nothing was changed; give yourself the right to write there";
        } else if (code == SQLiteErrorCode.SQLITE_BUSY.code) {
            what = "another Understudy is writing to it for long; nothing was changed; end the other one, then do it again";
        } else if (code == SQLiteErrorCode.SQLITE_CANTOPEN.code || code == SQLiteErrorCode.SQLITE_PERM.code) {
            what = "this file can't be opened; see that it is a file that you may read and write, in a folder that you may"
                    + " write to";
        } else if (code == SQLiteErrorCode.SQLITE_NOTADB.code) {
            what = "this is not an Understudy database; move it away, then a new one is made";
        } else if (code == SQLiteErrorCode.SQLITE_CORRUPT.code) {
            what = "this database is damaged; put back a copy of it, or move it away and a new one is made";
        } else if (code == SQLiteErrorCode.SQLITE_IOERR.code) {
            what = "the disk reports an error; nothing was changed; copy what you need off that disk";
        } else {
            what = "this database does not work: " + e.getMessage();
        }
        return Refused.setup(file.toString(), "" + what, "", e);
    }
}
