package understudy.text;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.jr.ob.api.ValueWriter;
import com.fasterxml.jackson.jr.ob.impl.JSONWriter;
import java.io.IOException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;

/** Writes a record in the order of its components; the library would write it in that of the alphabet. */
final class RecordWriter implements ValueWriter {

    private final Class<?> type;
    private final List<String> keys = new ArrayList<>();
    private final List<Method> components = new ArrayList<>();

    RecordWriter(Class<?> type) {
        this.type = type;
        for (RecordComponent component : type.getRecordComponents()) {
            keys.add(component.getName().replaceFirst("_$", ""));
            components.add(component.getAccessor());
            component.getAccessor().setAccessible(true);
        }
    }

    @Override
    public void writeValue(JSONWriter context, JsonGenerator json, Object value) throws IOException {
        json.writeStartObject();
        for (int i = 0; i < keys.size(); i++) {
            json.writeFieldName(keys.get(i));
            context.writeValue(read(components.get(i), value));
        }
        json.writeEndObject();
    }

    private static Object read(Method component, Object record) {
        try {
            return component.invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("a record's components can be read", e);
        }
    }

    @Override
    public Class<?> valueType() {
        return type;
    }
}
