package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class RouteWatchTest {

    private static final String LISTING = """
            Sink Input #4
            \tDriver: protocol-native.c
            \tSink: 0
            \tProperties:
            \t\tapplication.process.id = "77"
            Sink Input #5
            \tDriver: protocol-native.c
            \tSink: 3
            \tProperties:
            \t\tapplication.process.id = "770"
            """;

    @Test
    void findsTheSinkOfItsOwnStreams() {
        assertThat(RouteWatch.sinks(LISTING, 77)).contains("0");
        assertThat(RouteWatch.sinks(LISTING, 770)).contains("3");
        assertThat(RouteWatch.sinks(LISTING, 7)).isEmpty();
        assertThat(RouteWatch.sinks("Connection failure: Connection refused\n", 77)).isEmpty();
    }
}
