package understudy.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.text.Source;
import understudy.trace.EntryText;
import understudy.trace.Hunt;
import understudy.trace.Job;

/** Jobs as rows, and back. */
final class JobRows {

    private static final String SUSPECT = "suspect";
    private static final String REFERENCE = "reference";

    private JobRows() {}

    static void insert(Connection on, Hunt hunt, State state, String searchText) throws SQLException {
        Job job = hunt.job();
        Range pin = job.equipment().pinVolts();
        if (pin.unit() != Unit.VOLT) {
            throw new IllegalArgumentException("what may lie on the pins is told in volts, got " + pin);
        }
        int events = job.events().size();
        long id = new Columns()
                .put("name", job.name()).put("name_key", SearchText.alike(job.name()))
                .put("begun", job.begun().toString())
                .put("vehicle", job.vehicle()).put("complaint", job.complaint()).put("who", job.who())
                .put("rig", job.equipment().rig().orElse(null)).put("input", job.equipment().input().orElse(null))
                .put("pin_from_volts", pin.from()).put("pin_to_volts", pin.to())
                .put("archived", false)
                .put("circuit_title", hunt.circuit().title())
                .put("events", events).put("state", state.words()).put("closed", state.closed())
                .put("changed", (events == 0 ? job.begun() : job.events().get(events - 1).at()).toString())
                .put("search_text", searchText)
                .insert(on, "job");
        for (String words : job.equipment().words()) {
            run(on, "INSERT INTO job_equipment SELECT ?1, count(*) + 1, ?2 FROM job_equipment WHERE job_id = ?1", id, words);
        }
        files(on, id, SUSPECT, job.suspect());
        if (job.reference().isPresent()) {
            files(on, id, REFERENCE, job.reference().get());
        }
        for (int number = 1; number <= events; number++) {
            insert(on, id, number, job.events().get(number - 1));
        }
    }

    private static void files(Connection on, long id, String role, Job.Subject subject) throws SQLException {
        file(on, id, role + " circuit", subject.circuit());
        file(on, id, role + " pattern", subject.pattern());
    }

    private static void file(Connection on, long id, String role, Source file) throws SQLException {
        run(on, "INSERT INTO job_file VALUES (?, ?, ?, ?)", id, role, file.fileName(), file.text());
    }

    static void insert(Connection on, long id, int number, Job.Event event) throws SQLException {
        EntryText text = EntryText.of(event.entry());
        run(on, "INSERT INTO job_event VALUES (?, ?, ?, ?)", id, number, event.at().toString(), text.kind());
        for (Map.Entry<String, String> value : text.values().entrySet()) {
            run(on, "INSERT INTO job_event_value VALUES (?, ?, ?, ?)", id, number, value.getKey(), value.getValue());
        }
    }

    /** What follows from one event more. */
    static void update(Connection on, long id, State state, Instant changed, String moreToSearch) throws SQLException {
        run(on, "UPDATE job SET events = events + 1, state = ?, closed = ?, changed = ?, archived = 0,"
                + " search_text = search_text || ? WHERE id = ?",
                state.words(), state.closed() ? 1 : 0, changed.toString(), "\n" + moreToSearch, id);
    }

    private static void run(Connection on, String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = on.prepareStatement(sql)) {
            bind(statement, values);
            statement.executeUpdate();
        }
    }

    private static void bind(PreparedStatement statement, Object... values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i]);
        }
    }

    static Job job(Connection on, long id) throws SQLException {
        Map<String, Source> files = files(on, id);
        try (PreparedStatement statement = on.prepareStatement("SELECT * FROM job WHERE id = ?")) {
            bind(statement, id);
            try (ResultSet row = statement.executeQuery()) {
                Job.Equipment equipment = new Job.Equipment(Optional.ofNullable(row.getString("rig")),
                        Optional.ofNullable(row.getString("input")),
                        new Range(row.getDouble("pin_from_volts"), row.getDouble("pin_to_volts"), Unit.VOLT), words(on, id));
                return new Job(row.getString("name"), Instant.parse(row.getString("begun")), row.getString("vehicle"),
                        row.getString("complaint"), row.getString("who"), subject(files, SUSPECT).orElseThrow(),
                        subject(files, REFERENCE), equipment, events(on, id));
            }
        }
    }

    private static Optional<Job.Subject> subject(Map<String, Source> files, String role) {
        return Optional.ofNullable(files.get(role + " circuit"))
                .map(circuit -> new Job.Subject(circuit, files.get(role + " pattern")));
    }

    private static Map<String, Source> files(Connection on, long id) throws SQLException {
        Map<String, Source> files = new LinkedHashMap<>();
        try (PreparedStatement statement = on.prepareStatement("SELECT role, name, text FROM job_file WHERE job_id = ?")) {
            bind(statement, id);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    files.put(row.getString(1), new Source(row.getString(2), row.getString(3)));
                }
            }
        }
        return files;
    }

    private static List<String> words(Connection on, long id) throws SQLException {
        List<String> words = new ArrayList<>();
        try (PreparedStatement statement = on.prepareStatement("SELECT words FROM job_equipment WHERE job_id = ? ORDER BY number")) {
            bind(statement, id);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    words.add(row.getString(1));
                }
            }
        }
        return words;
    }

    private static List<Job.Event> events(Connection on, long id) throws SQLException {
        Map<Integer, Map<String, String>> values = values(on, id);
        List<Job.Event> events = new ArrayList<>();
        try (PreparedStatement statement =
                on.prepareStatement("SELECT number, at, kind FROM job_event WHERE job_id = ? ORDER BY number")) {
            bind(statement, id);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    EntryText text = new EntryText(row.getString(3), values.getOrDefault(row.getInt(1), Map.of()));
                    events.add(new Job.Event(Instant.parse(row.getString(2)), text.entry()));
                }
            }
        }
        return events;
    }

    private static Map<Integer, Map<String, String>> values(Connection on, long id) throws SQLException {
        Map<Integer, Map<String, String>> values = new LinkedHashMap<>();
        try (PreparedStatement statement = on.prepareStatement("SELECT number, name, value FROM job_event_value WHERE job_id = ?")) {
            bind(statement, id);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    values.computeIfAbsent(row.getInt(1), number -> new LinkedHashMap<>()).put(row.getString(2), row.getString(3));
                }
            }
        }
        return values;
    }

    static JobLine line(ResultSet row) throws SQLException {
        return new JobLine(row.getString("name"), Instant.parse(row.getString("begun")), row.getString("vehicle"),
                row.getString("complaint"), row.getString("who"), row.getString("circuit_title"), row.getInt("events"),
                row.getString("state"), row.getBoolean("closed"), row.getBoolean("archived"),
                Instant.parse(row.getString("changed")));
    }
}
