package understudy.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.text.Source;
import understudy.trace.EntryText;
import understudy.trace.Job;

/** Jobs as rows, and back. */
final class JobRows {

    /** What a list shows of a job. */
    static final String LINE =
            "name, begun, vehicle, complaint, who, circuit_title, events, state, closed, archived, changed";

    private static final String SUSPECT = "suspect";
    private static final String REFERENCE = "reference";

    private static final DateTimeFormatter AT = new DateTimeFormatterBuilder().appendInstant(9).toFormatter(Locale.ROOT);

    private JobRows() {}

    static void insert(Connection on, Job job, String circuitTitle, JobState state) throws SQLException {
        Range pin = job.equipment().pinVolts();
        if (pin.unit() != Unit.VOLT) {
            throw new IllegalArgumentException("what may lie on the pins is told in volts, got " + pin);
        }
        int events = job.events().size();
        long id = new Columns()
                .put("name", job.name()).put("name_key", SearchText.key(job.name()))
                .put("begun", text(job.begun()))
                .put("vehicle", job.vehicle()).put("complaint", job.complaint()).put("who", job.who())
                .put("rig", job.equipment().rig().orElse(null)).put("input", job.equipment().input().orElse(null))
                .put("pin_from_volts", pin.from()).put("pin_to_volts", pin.to())
                .put("archived", false)
                .put("circuit_title", circuitTitle)
                .put("events", events).put("state", state.words()).put("closed", state.closed())
                .put("changed", text(events == 0 ? job.begun() : job.events().get(events - 1).at()))
                .put("search_text", SearchText.of(job, circuitTitle))
                .insert(on, "job");
        int line = 1;
        for (String words : job.equipment().words()) {
            run(on, "INSERT INTO job_equipment VALUES (?, ?, ?)", id, line++, words);
        }
        files(on, id, SUSPECT, job.suspect());
        if (job.reference().isPresent()) {
            files(on, id, REFERENCE, job.reference().get());
        }
        insert(on, id, 1, job.events());
    }

    private static void files(Connection on, long id, String role, Job.Subject subject) throws SQLException {
        file(on, id, role + " circuit", subject.circuit());
        file(on, id, role + " pattern", subject.pattern());
    }

    private static void file(Connection on, long id, String role, Source file) throws SQLException {
        run(on, "INSERT INTO job_file VALUES (?, ?, ?, ?)", id, role, file.fileName(), file.text());
    }

    /** @param number of the first of them */
    static void insert(Connection on, long id, int number, List<Job.Event> events) throws SQLException {
        int next = number;
        try (PreparedStatement event = on.prepareStatement("INSERT INTO job_event VALUES (?, ?, ?, ?)");
                PreparedStatement value = on.prepareStatement("INSERT INTO job_event_value VALUES (?, ?, ?, ?)")) {
            for (Job.Event one : events) {
                EntryText entry = EntryText.of(one.entry());
                bind(event, id, next, text(one.at()), entry.kind());
                event.executeUpdate();
                for (Map.Entry<String, String> named : entry.values().entrySet()) {
                    bind(value, id, next, named.getKey(), named.getValue());
                    value.executeUpdate();
                }
                next++;
            }
        }
    }

    /** Always as long, so that what is later also sorts later. */
    private static String text(Instant at) {
        return AT.format(at);
    }

    /** What follows from these events more. */
    static void update(Connection on, long id, JobState state, Job job, List<Job.Event> more) throws SQLException {
        StringBuilder search = new StringBuilder();
        more.forEach(event -> search.append('\n').append(SearchText.of(event.entry())));
        run(on, "UPDATE job SET vehicle = ?, complaint = ?, who = ?, events = events + ?, state = ?, closed = ?, changed = ?, archived = 0,"
                + " search_text = search_text || ? WHERE id = ?",
                job.vehicle(), job.complaint(), job.who(), more.size(), state.words(), state.closed() ? 1 : 0, text(more.get(more.size() - 1).at()), search.toString(), id);
    }

    private static void run(Connection on, String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = on.prepareStatement(sql)) {
            bind(statement, values);
            statement.executeUpdate();
        }
    }

    static void bind(PreparedStatement statement, Object... values) throws SQLException {
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

    /** Of a row with {@link #LINE}; by place, since names are looked up at every row. */
    static JobLine line(ResultSet row) throws SQLException {
        return new JobLine(row.getString(1), Instant.parse(row.getString(2)), row.getString(3), row.getString(4), row.getString(5),
                row.getString(6), row.getInt(7), row.getString(8), row.getBoolean(9), row.getBoolean(10),
                Instant.parse(row.getString(11)));
    }
}
