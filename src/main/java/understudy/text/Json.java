package understudy.text;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.jr.ob.JSON;
import com.fasterxml.jackson.jr.ob.JacksonJrExtension;
import com.fasterxml.jackson.jr.ob.api.ExtensionContext;
import com.fasterxml.jackson.jr.ob.api.ReaderWriterModifier;
import com.fasterxml.jackson.jr.ob.api.ReaderWriterProvider;
import com.fasterxml.jackson.jr.ob.api.ValueWriter;
import com.fasterxml.jackson.jr.ob.impl.JSONWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import understudy.refusal.Refused;

/**
 * JSON of records, and back into maps.
 *
 * <p>A record becomes an object with its components as keys, in their order. A component whose name is a Java keyword ends
 * in an underscore, which the key lacks. Lists, maps, text, booleans, numbers, enums (by name), instants and paths become what
 * one expects; an empty optional and a number that is not finite become null. Any other type is an error of the caller.
 * Text beyond ASCII is escaped, so that no locale can spoil it.
 */
public final class Json {

    private static final JSON MAPPER = JSON.builder(JsonFactory.builder()
                    .enable(JsonWriteFeature.ESCAPE_NON_ASCII)
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build())
            .register(new Extension())
            .enable(JSON.Feature.PRETTY_PRINT_OUTPUT, JSON.Feature.WRITE_NULL_PROPERTIES)
            .enable(JSON.Feature.FAIL_ON_UNKNOWN_TYPE_WRITE)
            .build();

    private Json() {}

    /** Writes a value into a file, whole or not at all. */
    public static void write(Object value, Path file) throws IOException {
        WholeFile.write(text(value) + "\n", file);
    }

    /** Likewise; a failure is a matter of the set-up. */
    public static void writeOrRefuse(Object value, Path file) {
        try {
            write(value, file);
        } catch (IOException e) {
            throw Refused.setup(file.toString(), "it could not be written: " + WholeFile.reason(e), "", e);
        }
    }

    /** Twelve digits: more than anything here is known to, and no 8000.000000000001 for 8000. */
    public static BigDecimal number(double value) {
        BigDecimal number = new BigDecimal(value, new MathContext(12)).stripTrailingZeros();
        // 90, not 9E+1
        return number.scale() < 0 ? number.setScale(0) : number;
    }

    /** A value as text of several lines, without a line end behind it. */
    public static String text(Object value) {
        try {
            return MAPPER.asString(value);
        } catch (IOException e) {
            throw new UncheckedIOException("only a value that JSON can't hold fails here", e);
        }
    }

    /**
     * An object as a map in the order of the text: text, numbers, booleans, lists, maps, null. A key may stand in an object
     * once only.
     *
     * @param place what the text is named in a refusal, a file's name for instance
     * @throws Refused when the text is no JSON object, with its line and column
     */
    public static Map<String, Object> read(String text, String place) {
        try {
            return MAPPER.mapFrom(text);
        } catch (JsonProcessingException e) {
            String at = e.getLocation() == null ? "" : ":" + e.getLocation().getLineNr() + ":" + e.getLocation().getColumnNr();
            throw Refused.at(place + at, "this can't be read as JSON ("
                    + e.getOriginalMessage().lines().findFirst().orElse("") + ")", "the file may have been cut off or changed");
        } catch (IOException e) {
            throw new UncheckedIOException("a text in memory can be read", e);
        }
    }

    private static final class Extension extends JacksonJrExtension {
        @Override
        protected void register(ExtensionContext context) {
            context.insertProvider(new Writers());
            context.insertModifier(new FiniteNumbers());
        }
    }

    /** What the library knows no writer for. */
    private static final class Writers extends ReaderWriterProvider {
        @Override
        public ValueWriter findValueWriter(JSONWriter context, Class<?> type) {
            if (type.isRecord()) {
                return new RecordWriter(type);
            } else if (type == Optional.class) {
                return new Writer(type, (with, json, value) -> with.writeValue(((Optional<?>) value).orElse(null)));
            } else if (type == OptionalDouble.class) {
                return new Writer(type, (with, json, value) ->
                        writeNumber(json, ((OptionalDouble) value).orElse(Double.NaN)));
            } else if (type == OptionalInt.class) {
                return new Writer(type, (with, json, value) -> {
                    OptionalInt number = (OptionalInt) value;
                    with.writeValue(number.isPresent() ? number.getAsInt() : null);
                });
            } else if (type == Instant.class || Path.class.isAssignableFrom(type)) {
                return new Writer(type, (with, json, value) -> json.writeString(value.toString()));
            } else if (Enum.class.isAssignableFrom(type)) {
                return new Writer(type, (with, json, value) -> json.writeString(((Enum<?>) value).name()));
            } else if (!type.getName().startsWith("java.")) {
                throw new IllegalArgumentException("no JSON is made of a " + type.getName());
            }
            return null;
        }
    }

    private static final class FiniteNumbers extends ReaderWriterModifier {
        @Override
        public ValueWriter overrideStandardValueWriter(JSONWriter context, Class<?> type, int kind) {
            return type == Double.class || type == double.class
                    ? new Writer(type, (with, json, value) -> writeNumber(json, (Double) value)) : null;
        }
    }

    private static void writeNumber(JsonGenerator json, double value) throws IOException {
        if (Double.isFinite(value)) {
            json.writeNumber(number(value));
        } else {
            json.writeNull();
        }
    }

    private interface Write {
        void write(JSONWriter with, JsonGenerator json, Object value) throws IOException;
    }

    private record Writer(Class<?> valueType, Write write) implements ValueWriter {
        @Override
        public void writeValue(JSONWriter context, JsonGenerator json, Object value) throws IOException {
            write.write(context, json, value);
        }
    }
}
