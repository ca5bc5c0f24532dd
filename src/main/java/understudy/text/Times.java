package understudy.text;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Times of day as the workshop's clock shows them, in the order of ISO 8601. */
public record Times(ZoneId zone) {

    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    /** "2026-03-01 13:00". */
    public String of(Instant instant) {
        return MINUTE.withZone(zone).format(instant);
    }

    /** "2026-03-01 13:00 UTC+01:00"; the offset is the one of that day. */
    public String withZone(Instant instant) {
        ZoneOffset offset = zone.getRules().getOffset(instant);
        return of(instant) + " UTC" + (offset.equals(ZoneOffset.UTC) ? "" : offset.getId());
    }
}
