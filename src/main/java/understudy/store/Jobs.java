package understudy.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import understudy.refusal.Deed;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;
import understudy.text.Nearest;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Job;

/**
 * The jobs in a store. Each thing that happens is on the disk before the method that keeps it returns. Names are looked up
 * whatever the case of their letters.
 */
public final class Jobs {

    private static final String NAME = "\\S|\\S.{0,58}\\S";

    private final Store store;

    Jobs(Store store) {
        this.store = store;
    }

    /**
     * Keeps a new job, with the events that it has already.
     *
     * @throws Refused when there is one of that name, or it is no name
     * @throws understudy.refusal.Refused when its circuits can't be read
     */
    public Hunt begin(Job job) {
        if (!job.name().matches(NAME) || job.name().chars().anyMatch(Character::isISOControl)) {
            throw new Refused("\"" + job.name() + "\" is no name for a job", "give 1 to 60 letters, digits and signs on one"
                    + " line, without a blank at either end, like \"speedometer, May\"");
        }
        Hunt hunt = Hunt.of(job);
        JobState state = JobState.of(hunt);
        return store.write(on -> {
            if (idOf(on, job.name()).isPresent()) {
                throw new Refused("there is a job called \"" + job.name() + "\" already", "give another name");
            }
            JobRows.insert(on, job, hunt.circuit().title(), state);
            return hunt;
        });
    }

    /**
     * Keeps one thing more. A job that was archived is back among the others then.
     *
     * @throws understudy.refusal.Refused when that can't be, or not yet; nothing has changed then
     * @throws Refused when another process went on with the job; nothing has changed by this one then
     */
    public Hunt add(Hunt hunt, Instant at, Entry entry) {
        Hunt after = hunt.after(at, entry);
        keep(hunt, after);
        return after;
    }

    /**
     * Keeps all that a hunt has more than it had before; all of it or, when this throws, nothing.
     *
     * @param before as it is kept
     * @throws Refused when another process went on with the job; nothing has changed by this one then
     */
    public void keep(Hunt before, Hunt after) {
        Job job = before.job();
        int count = job.events().size();
        List<Job.Event> more = after.job().events().subList(count, after.job().events().size());
        if (more.isEmpty()) {
            return;
        }
        JobState state = JobState.of(after);
        store.write(on -> {
            long id = idOf(on, job.name()).orElseThrow(() -> Refused.setup("another Understudy removed job \"" + job.name() + "\"",
                    "what you entered last was not kept"));
            if (!isAt(on, id, job)) {
                throw Refused.setup("another Understudy went on with job \"" + job.name() + "\"",
                        "what you entered last was not kept; resume the job and enter it again");
            }
            JobRows.insert(on, id, count + 1, more);
            JobRows.update(on, id, state, after.job(), more);
            return after;
        });
    }

    /** Whether what is kept ends where this job does; events are only ever added, so their count tells. */
    private static boolean isAt(Connection on, long id, Job job) throws SQLException {
        try (PreparedStatement statement = on.prepareStatement("SELECT events, begun FROM job WHERE id = ?")) {
            statement.setLong(1, id);
            try (ResultSet row = statement.executeQuery()) {
                return row.getInt("events") == job.events().size() && Instant.parse(row.getString("begun")).equals(job.begun());
            }
        }
    }

    /** @throws Refused when there is none of that name */
    public Job find(String name) {
        return store.atOneMoment(on -> JobRows.job(on, known(on, name)));
    }

    /** Of one job, as in a list. */
    public JobLine line(String name) {
        return store.read(on -> lines(on, "id = ?", List.of(known(on, name))).get(0));
    }

    /** This name, or the first with a number behind it that no job has. */
    public String free(String name) {
        String free = name;
        for (int number = 2; has(free); number++) {
            free = name + "-" + number;
        }
        return free;
    }

    /** Whether there is a job of that name, archived or not. */
    public boolean has(String name) {
        return store.read(on -> idOf(on, name).isPresent());
    }

    /** All jobs, or all but the archived ones; what was last added to comes first. */
    public List<JobLine> list(boolean archivedToo) {
        return search("", archivedToo, Integer.MAX_VALUE);
    }

    /**
     * Likewise those in which every one of the words, parted by blanks, is found: in what names them, and in what was noted.
     *
     * @param most how many are wanted at most
     */
    public List<JobLine> search(String words, boolean archivedToo, int most) {
        List<Object> values = asked(words, archivedToo);
        values.add(most);
        return store.read(on -> lines(on, found(words) + " ORDER BY changed DESC, id DESC LIMIT ?", values));
    }

    /** How many a search finds. */
    public int count(String words, boolean archivedToo) {
        return store.read(on -> {
            try (PreparedStatement statement = on.prepareStatement("SELECT count(*) FROM job WHERE " + found(words))) {
                JobRows.bind(statement, asked(words, archivedToo).toArray());
                try (ResultSet row = statement.executeQuery()) {
                    return row.getInt(1);
                }
            }
        });
    }

    private static String found(String words) {
        return "archived <= ?" + " AND instr(search_text, ?)".repeat(SearchText.asked(words).size());
    }

    private static List<Object> asked(String words, boolean archivedToo) {
        List<Object> values = new ArrayList<>(List.of(archivedToo ? 1 : 0));
        values.addAll(SearchText.asked(words));
        return values;
    }

    private static List<JobLine> lines(Connection on, String where, List<?> values) throws SQLException {
        List<JobLine> lines = new ArrayList<>();
        try (PreparedStatement statement = on.prepareStatement("SELECT " + JobRows.LINE + " FROM job WHERE " + where)) {
            JobRows.bind(statement, values.toArray());
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    lines.add(JobRows.line(row));
                }
            }
        }
        return lines;
    }

    /** Puts a job away, or takes it back among the others. */
    public void archive(String name, boolean away) {
        store.write(on -> {
            new Columns().put("archived", away).update(on, "job", known(on, name));
            return null;
        });
    }

    /** Removes a job and all that happened in it, for good. */
    public void remove(String name) {
        store.write(on -> {
            try (PreparedStatement statement = on.prepareStatement("DELETE FROM job WHERE id = ?")) {
                statement.setLong(1, known(on, name));
                return statement.executeUpdate();
            }
        });
    }

    private static Optional<Long> idOf(Connection on, String name) throws SQLException {
        try (PreparedStatement statement = on.prepareStatement("SELECT id FROM job WHERE name_key = ?")) {
            statement.setString(1, SearchText.key(name));
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? Optional.of(row.getLong(1)) : Optional.empty();
            }
        }
    }

    private static List<String> names(Connection on) throws SQLException {
        List<String> names = new ArrayList<>();
        try (PreparedStatement statement = on.prepareStatement("SELECT name FROM job"); ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                names.add(row.getString(1));
            }
        }
        return names;
    }

    private static long known(Connection on, String name) throws SQLException {
        Optional<Long> id = idOf(on, name);
        if (id.isEmpty()) {
            throw unknown(on, name);
        }
        return id.get();
    }

    private static Refused unknown(Connection on, String name) throws SQLException {
        List<String> known = names(on);
        List<String> near = Nearest.to(name, known);
        return new Refused("there is no job called \"" + name + "\"", known.isEmpty()
                ? Remedy.of("begin one: ").perform(Deed.BEGIN_HUNT, "")
                : near.isEmpty() ? Remedy.of("list them: ").perform(Deed.LIST_JOBS, "")
                : Remedy.of("did you mean \"" + near.get(0) + "\"?"));
    }
}
