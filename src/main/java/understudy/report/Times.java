package understudy.report;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Times of day as the workshop's clock showed them, in the order of ISO 8601. */
record Times(ZoneId zone) {

    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final DateTimeFormatter WITH_OFFSET = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm '(UTC'xxx')'", Locale.ROOT);

    /** "2026-03-01 13:00". */
    String of(Instant instant) {
        return MINUTE.withZone(zone).format(instant);
    }

    /** "2026-03-01 13:00 (UTC+01:00)". */
    String withOffset(Instant instant) {
        return WITH_OFFSET.withZone(zone).format(instant);
    }
}
