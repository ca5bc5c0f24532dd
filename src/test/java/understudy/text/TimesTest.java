package understudy.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimesTest {

    /** Offsets of the time zone database: summer and winter, half an hour, none. */
    @ParameterizedTest
    @CsvSource({"Europe/Berlin, 2026-01-15T12:00:00Z, 2026-01-15 13:00 UTC+01:00", "Europe/Berlin, 2026-07-15T12:00:00Z, 2026-07-15 14:00 UTC+02:00",
        "Asia/Kolkata, 2026-01-15T23:30:00Z, 2026-01-16 05:00 UTC+05:30", "UTC, 2026-01-15T12:00:59Z, 2026-01-15 12:00 UTC"})
    void aTimeIsLocalWithTheOffsetOfThatDay(String zone, Instant at, String shown) {
        assertThat(new Times(ZoneId.of(zone)).withZone(at)).isEqualTo(shown);
    }
}
