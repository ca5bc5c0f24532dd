package understudy.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import understudy.rig.AudioOutput;
import understudy.rig.Coupling;
import understudy.rig.Divider;
import understudy.rig.Lead;
import understudy.rig.Spread;

/** Records as columns: names with values, in order; and back. */
final class Columns {

    private final Map<String, Object> values = new LinkedHashMap<>();

    Columns put(String column, Object value) {
        values.put(column, value instanceof Boolean yes ? (yes ? 1 : 0) : value);
        return this;
    }

    private Columns put(String column, String toleranceColumn, Optional<Spread> spread) {
        put(column, spread.map(Spread::nominal).orElse(null));
        return put(toleranceColumn, spread.map(Spread::tolerance).orElse(null));
    }

    Columns put(Optional<AudioOutput> output) {
        put("full_scale_volts", "full_scale_tolerance", output.map(AudioOutput::fullScaleVolts));
        put("output_ohms", "output_tolerance", output.map(AudioOutput::outputOhms));
        put("output_farads", "output_farads_tolerance", output.flatMap(AudioOutput::couplingFarads));
        put("inverted", output.map(AudioOutput::inverted).orElse(null));
        return put("pop_volts", output.map(AudioOutput::popVolts).orElse(null));
    }

    static AudioOutput output(ResultSet row) throws SQLException {
        return new AudioOutput(spread(row, "full_scale_volts", "full_scale_tolerance").orElseThrow(),
                spread(row, "output_ohms", "output_tolerance").orElseThrow(),
                spread(row, "output_farads", "output_farads_tolerance"),
                row.getBoolean("inverted"), row.getDouble("pop_volts"));
    }

    Columns put(Divider divider) {
        Optional<Divider> built = Optional.ofNullable(divider);
        put("series_ohms", "series_tolerance", built.map(Divider::seriesOhms));
        put("shunt_ohms", "shunt_tolerance", built.flatMap(Divider::shuntOhms));
        put("capacitor_farads", "capacitor_tolerance", built.map(Divider::coupling)
                .filter(Coupling.Capacitor.class::isInstance).map(coupling -> ((Coupling.Capacitor) coupling).farads()));
        Optional<Coupling.Transformer> transformer = built.map(Divider::coupling)
                .filter(Coupling.Transformer.class::isInstance).map(Coupling.Transformer.class::cast);
        put("transformer_ratio", "transformer_ratio_tolerance", transformer.map(Coupling.Transformer::ratio));
        put("transformer_henries", "transformer_henries_tolerance", transformer.map(Coupling.Transformer::henries));
        put("primary_ohms", "primary_tolerance", transformer.map(Coupling.Transformer::primaryOhms));
        put("secondary_ohms", "secondary_tolerance", transformer.map(Coupling.Transformer::secondaryOhms));
        return put("most_volt_seconds", transformer.map(Coupling.Transformer::mostVoltSeconds).orElse(null));
    }

    static Optional<Divider> divider(ResultSet row) throws SQLException {
        Optional<Spread> series = spread(row, "series_ohms", "series_tolerance");
        if (series.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Divider(series.get(), spread(row, "shunt_ohms", "shunt_tolerance"), coupling(row)));
    }

    private static Coupling coupling(ResultSet row) throws SQLException {
        Optional<Spread> ratio = spread(row, "transformer_ratio", "transformer_ratio_tolerance");
        if (ratio.isPresent()) {
            return new Coupling.Transformer(ratio.get(),
                    spread(row, "transformer_henries", "transformer_henries_tolerance").orElseThrow(),
                    spread(row, "primary_ohms", "primary_tolerance").orElseThrow(),
                    spread(row, "secondary_ohms", "secondary_tolerance").orElseThrow(),
                    row.getDouble("most_volt_seconds"));
        }
        Optional<Spread> farads = spread(row, "capacitor_farads", "capacitor_tolerance");
        return farads.isPresent() ? new Coupling.Capacitor(farads.get()) : new Coupling.Direct();
    }

    Columns put(Lead lead) {
        put("lead_ohms", "lead_tolerance", Optional.of(lead.ohms()));
        return put("lead_farads", lead.farads());
    }

    static Lead lead(ResultSet row) throws SQLException {
        return new Lead(spread(row, "lead_ohms", "lead_tolerance").orElseThrow(), row.getDouble("lead_farads"));
    }

    private static Optional<Spread> spread(ResultSet row, String column, String toleranceColumn) throws SQLException {
        double nominal = row.getDouble(column);
        return row.wasNull() ? Optional.empty() : Optional.of(new Spread(nominal, row.getDouble(toleranceColumn)));
    }

    /** @return the new row's id */
    long insert(Connection on, String table) throws SQLException {
        String names = String.join(", ", values.keySet());
        String marks = values.keySet().stream().map(name -> "?").collect(Collectors.joining(", "));
        try (PreparedStatement statement =
                on.prepareStatement("INSERT INTO " + table + " (" + names + ") VALUES (" + marks + ") RETURNING rowid")) {
            bind(statement);
            try (ResultSet row = statement.executeQuery()) {
                return row.getLong(1);
            }
        }
    }

    void update(Connection on, String table, long id) throws SQLException {
        String sets = values.keySet().stream().map(name -> name + " = ?").collect(Collectors.joining(", "));
        try (PreparedStatement statement = on.prepareStatement("UPDATE " + table + " SET " + sets + " WHERE id = ?")) {
            bind(statement);
            statement.setLong(values.size() + 1, id);
            statement.executeUpdate();
        }
    }

    private void bind(PreparedStatement statement) throws SQLException {
        int place = 1;
        for (Object value : values.values()) {
            statement.setObject(place++, value);
        }
    }
}
