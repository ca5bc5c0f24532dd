package understudy.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import understudy.reading.DisplayUnit;
import understudy.reading.Estimate;
import understudy.reading.Reading;
import understudy.reading.Scale;
import understudy.reading.Tolerance;

/** The scales of displays in a store. Vehicles are told apart by their words, whatever the case of the letters. */
public final class LearnedScales {

    private final Store store;

    LearnedScales(Store store) {
        this.store = store;
    }

    /** Keeps one more; earlier ones stay. */
    public void keep(LearnedScale scale) {
        Reading reading = scale.reading();
        store.write(on -> new Columns()
                .put("vehicle", scale.vehicle()).put("vehicle_key", SearchText.key(scale.vehicle()))
                .put("circuit_id", scale.circuitId())
                .put("unit", reading.unit().symbol()).put("step", reading.step())
                .put("base_per_hz", scale.line().basePerHz()).put("offset_base", scale.line().offsetBase())
                .put("tolerance_percent", reading.tolerance().percent()).put("tolerance", reading.tolerance().shown())
                .put("per_hz_low", scale.perHz().low()).put("per_hz", scale.perHz().value())
                .put("per_hz_high", scale.perHz().high())
                .put("offset_low", scale.offset().low()).put("offset_value", scale.offset().value())
                .put("offset_high", scale.offset().high())
                .put("at", scale.at().toString()).put("origin", scale.origin())
                .insert(on, "learned_scale"));
    }

    /** What was learned on this vehicle, the newest first. */
    public List<LearnedScale> forVehicle(String vehicle) {
        return store.read(on -> scales(on, "vehicle_key = ?", SearchText.key(vehicle)));
    }

    /** Likewise on one circuit of it. */
    public List<LearnedScale> forVehicle(String vehicle, String circuitId) {
        return store.read(on -> scales(on, "vehicle_key = ? AND circuit_id = ?", SearchText.key(vehicle), circuitId));
    }

    private static List<LearnedScale> scales(Connection on, String where, String... values) throws SQLException {
        List<LearnedScale> scales = new ArrayList<>();
        try (PreparedStatement statement =
                on.prepareStatement("SELECT * FROM learned_scale WHERE " + where + " ORDER BY id DESC")) {
            for (int i = 0; i < values.length; i++) {
                statement.setString(i + 1, values[i]);
            }
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    scales.add(scale(row));
                }
            }
        }
        // by time and not by the text of it, in which half seconds come before whole ones
        scales.sort(Comparator.comparing(LearnedScale::at).reversed());
        return scales;
    }

    private static LearnedScale scale(ResultSet row) throws SQLException {
        String symbol = row.getString("unit");
        DisplayUnit unit = Arrays.stream(DisplayUnit.values()).filter(one -> one.symbol().equals(symbol)).findFirst().orElseThrow();
        Reading reading = new Reading(Reading.Kind.LEARNED, unit,
                new Scale.Line(row.getDouble("base_per_hz"), row.getDouble("offset_base")),
                new Tolerance(row.getDouble("tolerance_percent"), row.getDouble("tolerance")), row.getDouble("step"));
        return new LearnedScale(row.getString("vehicle"), row.getString("circuit_id"), reading,
                new Estimate(row.getDouble("per_hz_low"), row.getDouble("per_hz"), row.getDouble("per_hz_high")),
                new Estimate(row.getDouble("offset_low"), row.getDouble("offset_value"), row.getDouble("offset_high")),
                Instant.parse(row.getString("at")), row.getString("origin"));
    }
}
