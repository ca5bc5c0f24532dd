package understudy.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import understudy.refusal.Deed;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;
import understudy.rig.CurrentLimits;

/** The rigs in a store, with the calibrations of each. Names are looked up whatever the case of their letters. */
public final class Rigs {

    private final Store store;

    Rigs(Store store) {
        this.store = store;
    }

    /** All, by name. */
    public List<NamedRig> all() {
        return store.read(on -> {
            List<NamedRig> rigs = new ArrayList<>();
            try (PreparedStatement statement = on.prepareStatement("SELECT * FROM rig ORDER BY name");
                    ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    rigs.add(rig(row));
                }
            }
            return rigs;
        });
    }

    /** @throws Refused when there is none of that name */
    public NamedRig find(String name) {
        return all().stream().filter(rig -> rig.name().equalsIgnoreCase(name)).findFirst().orElseThrow(() -> unknown(name));
    }

    public boolean has(String name) {
        return all().stream().anyMatch(rig -> rig.name().equalsIgnoreCase(name));
    }

    /** Keeps a new rig. */
    public void make(NamedRig rig) {
        store.write(on -> {
            if (idOf(on, rig.name()).isPresent()) {
                throw new Refused("there is a rig called " + rig.name() + " already", 
                        Remedy.of("give another name, or change that one: ").perform(Deed.CHANGE_RIG, rig.name()));
            }
            return columns(rig).insert(on, "rig");
        });
    }

    /** Puts {@code changed} in the place of the rig called {@code name}; its calibrations stay with it. */
    public void change(String name, NamedRig changed) {
        store.write(on -> {
            long id = idOf(on, name).orElseThrow(() -> unknown(name));
            if (idOf(on, changed.name()).filter(other -> other != id).isPresent()) {
                throw new Refused("there is another rig called " + changed.name() + " already", "give another name");
            }
            columns(changed).update(on, "rig", id);
            return null;
        });
    }

    /** Removes a rig and its calibrations, for good. */
    public void remove(String name) {
        store.write(on -> {
            long id = idOf(on, name).orElseThrow(() -> unknown(name));
            try (PreparedStatement statement = on.prepareStatement("DELETE FROM rig WHERE id = ?")) {
                statement.setLong(1, id);
                return statement.executeUpdate();
            }
        });
    }

    /** Keeps a calibration. A good one becomes the rig's output, in the same step; a failed one changes nothing else. */
    public void calibrate(String name, Calibration calibration) {
        store.write(on -> {
            long rig = idOf(on, name).orElseThrow(() -> unknown(name));
            long id = new Columns()
                    .put("rig_id", rig).put("at", calibration.at().toString()).put("method", calibration.method())
                    .put(calibration.output()).put("remark", calibration.remark())
                    .insert(on, "calibration");
            putAll(on, "calibration_condition", id, calibration.conditions());
            putAll(on, "calibration_value", id, calibration.values());
            if (calibration.good()) {
                new Columns().put(calibration.output()).put("calibrated", true).put("changed", calibration.at().toString())
                        .update(on, "rig", rig);
            }
            return null;
        });
    }

    /** Of one rig, the latest first. */
    public List<Calibration> calibrations(String name) {
        return store.read(on -> {
            List<Calibration> calibrations = new ArrayList<>();
            try (PreparedStatement statement =
                    on.prepareStatement("SELECT * FROM calibration WHERE rig_id = ? ORDER BY id DESC")) {
                statement.setLong(1, idOf(on, name).orElseThrow(() -> unknown(name)));
                try (ResultSet row = statement.executeQuery()) {
                    while (row.next()) {
                        calibrations.add(calibration(on, row));
                    }
                }
            }
            return calibrations;
        });
    }

    private static Calibration calibration(Connection on, ResultSet row) throws SQLException {
        row.getDouble("full_scale_volts");
        boolean good = !row.wasNull();
        Map<String, Double> values = new TreeMap<>();
        allOf(on, "calibration_value", row.getLong("id")).forEach((name, value) -> values.put(name, (Double) value));
        Map<String, String> conditions = new TreeMap<>();
        allOf(on, "calibration_condition", row.getLong("id")).forEach((name, value) -> conditions.put(name, (String) value));
        return new Calibration(Instant.parse(row.getString("at")), row.getString("method"),
                good ? Optional.of(Columns.output(row)) : Optional.empty(), conditions, values, row.getString("remark"));
    }

    private static void putAll(Connection on, String table, long calibration, Map<String, ?> values) throws SQLException {
        for (Map.Entry<String, ?> value : values.entrySet()) {
            try (PreparedStatement statement = on.prepareStatement("INSERT INTO " + table + " VALUES (?, ?, ?)")) {
                statement.setLong(1, calibration);
                statement.setString(2, value.getKey());
                statement.setObject(3, value.getValue());
                statement.executeUpdate();
            }
        }
    }

    private static Map<String, Object> allOf(Connection on, String table, long calibration) throws SQLException {
        Map<String, Object> values = new TreeMap<>();
        try (PreparedStatement statement =
                on.prepareStatement("SELECT name, value FROM " + table + " WHERE calibration_id = ?")) {
            statement.setLong(1, calibration);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    values.put(row.getString(1), row.getObject(2));
                }
            }
        }
        return values;
    }

    private static Optional<Long> idOf(Connection on, String name) throws SQLException {
        try (PreparedStatement statement = on.prepareStatement("SELECT id FROM rig WHERE name = ?")) {
            statement.setString(1, name);
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? Optional.of(row.getLong(1)) : Optional.empty();
            }
        }
    }

    private Refused unknown(String name) {
        String known = all().stream().map(NamedRig::name).collect(Collectors.joining(", "));
        return new Refused("there is no rig called \"" + name + "\"", known.isEmpty()
                ? Remedy.of("make one: ").perform(Deed.MAKE_RIG, "") : Remedy.of("there are: " + known));
    }

    private static Columns columns(NamedRig rig) {
        return new Columns()
                .put("name", rig.name())
                .put("device_name", rig.device().map(DeviceIdentity::name).orElse(null))
                .put("device_description", rig.device().map(DeviceIdentity::description).orElse(null))
                .put("device_vendor", rig.device().map(DeviceIdentity::vendor).orElse(null))
                .put("device_ordinal", rig.device().map(DeviceIdentity::ordinal).orElse(null))
                .put(Optional.of(rig.output()))
                .put("calibrated", rig.calibrated())
                .put(rig.divider().orElse(null))
                .put(rig.lead())
                .put("normal_amps", rig.limits().normalAmps())
                .put("fault_amps", rig.limits().faultAmps())
                .put("override_reason", rig.limits().override().orElse(null))
                .put("notes", rig.notes())
                .put("created", rig.created().toString())
                .put("changed", rig.changed().toString());
    }

    private static NamedRig rig(ResultSet row) throws SQLException {
        Optional<DeviceIdentity> device = Optional.ofNullable(row.getString("device_name")).isEmpty()
                ? Optional.empty()
                : Optional.of(new DeviceIdentity(row.getString("device_name"), row.getString("device_description"),
                        row.getString("device_vendor"), row.getInt("device_ordinal")));
        return new NamedRig(row.getString("name"), device, Columns.output(row), row.getBoolean("calibrated"),
                Columns.divider(row), Columns.lead(row),
                new CurrentLimits(row.getDouble("normal_amps"), row.getDouble("fault_amps"),
                        Optional.ofNullable(row.getString("override_reason"))),
                row.getString("notes"), Instant.parse(row.getString("created")), Instant.parse(row.getString("changed")));
    }
}
