package understudy.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/** Results for scripts. Maps keep their order; text beyond ASCII is escaped, so that no locale can spoil it. */
final class Json {

    private static final JSON WRITER = JSON.builder(
                    JsonFactory.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build())
            .enable(JSON.Feature.PRETTY_PRINT_OUTPUT, JSON.Feature.WRITE_NULL_PROPERTIES)
            .enable(JSON.Feature.FAIL_ON_UNKNOWN_TYPE_WRITE)
            .build();

    private Json() {}

    /** A map in the order given: key, value, key, value. Values: text, finite numbers, booleans, lists, maps, null. */
    static Map<String, Object> map(Object... keysAndValues) {
        Map<String, Object> map = new LinkedHashMap<>();
        for (int i = 0; i < keysAndValues.length; i += 2) {
            map.put((String) keysAndValues[i], keysAndValues[i + 1]);
        }
        return map;
    }

    /** Twelve digits: more than anything here is known to, and no 8000.000000000001 for 8000. */
    static BigDecimal number(double value) {
        BigDecimal number = new BigDecimal(value, new MathContext(12)).stripTrailingZeros();
        // 90, not 9E+1
        return number.scale() < 0 ? number.setScale(0) : number;
    }

    /** A value as text of several lines, without a line end behind it. */
    static String text(Object value) {
        try {
            return WRITER.asString(value);
        } catch (IOException e) {
            throw new UncheckedIOException("only a value that JSON can't hold fails here", e);
        }
    }

    /** Writes a value into a file, whole or not at all. */
    static void write(Object value, Path file) throws IOException {
        WholeFile.write(text(value) + "\n", file);
    }
}
