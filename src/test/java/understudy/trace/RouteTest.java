package understudy.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class RouteTest {

    private static final Access HERE = new Access(1, true, 0, 0);
    private static final Access NOT_HERE = new Access(1, false, 0, 0);
    /** Sums and quotients of a handful of numbers below 1. */
    private static final double ROUNDING = 1e-15;

    @Test
    void suspectsThatNoPointTellsApartAreConvictedTogether() {
        Route route = new Route(List.of(HERE, NOT_HERE, NOT_HERE, HERE), 0.75);
        Odds odds = Odds.of(1, 2, 2, 2, 1);
        assertThat(route.likeliest(odds)).isEqualTo(new Route.Group(1, 3, 0.75));
        assertThat(route.ended(odds)).isTrue();
        assertThat(new Route(List.of(HERE, NOT_HERE, NOT_HERE, HERE), 0.76).ended(odds)).isFalse();
    }

    @Test
    void nothingMoreCanBeToldWhereOneCanNowhereInject() {
        Route route = new Route(List.of(NOT_HERE, NOT_HERE), 1);
        Odds odds = Odds.of(0.1, 0.2, 0.7); // thirds and tenths don't add up to 1 in binary
        assertThat(route.likeliest(odds)).isEqualTo(new Route.Group(0, 2, 1));
        assertThat(new Planner(route).choose(odds)).isEmpty();
    }

    @Test
    void certaintyIsReachedWhenReadingsAreNeverWrong() {
        Route route = new Route(List.of(HERE, NOT_HERE, HERE), 1);
        Odds odds = route.after(route.after(Odds.of(0.1, 0.7, 0.1, 0.3), 0, false), 2, true);
        assertThat(route.likeliest(odds)).isEqualTo(new Route.Group(1, 2, 1));
    }

    @Test
    void aReadingIsAsProbableAsItsCauses() {
        Route route = new Route(List.of(new Access(1, true, 0.1, 0.2), HERE), 0.9);
        // good: the sensor's side is bad (1/4) and the reading right, or another (3/4) and the reading wrong
        assertThat(route.probability(Odds.of(1, 1, 2), 0, true)).isCloseTo(0.25 * 0.9 + 0.75 * 0.2, within(ROUNDING));
        assertThat(route.probability(Odds.of(1, 1, 2), 0, false)).isCloseTo(0.25 * 0.1 + 0.75 * 0.8, within(ROUNDING));
    }

    @Test
    void impossibleEvidenceEndsTheHuntWithoutAConviction() {
        Route route = new Route(List.of(HERE, HERE), 0.9);
        Odds odds = route.after(route.after(Odds.of(1, 1, 1), 0, true), 1, false);
        assertThat(route.ended(odds)).isTrue();
        assertThat(route.likeliest(odds).probability()).isZero();
        assertThat(new Planner(route).choose(odds)).isEmpty();
        assertThatThrownBy(() -> PlanTree.of(route, odds)).hasMessageContaining("no suspect is possible");
    }

    @Test
    void whatCannotBeIsRefusedWithTheNumber() {
        assertThatThrownBy(() -> new Access(0, true, 0, 0)).hasMessageContaining("more than 0 minutes, not 0.0");
        assertThatThrownBy(() -> new Access(Double.NaN, true, 0, 0)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> new Access(1, true, 0.5, 0)).hasMessageContaining("below 0.5, not 0.5");
        assertThatThrownBy(() -> new Access(1, true, 0, -0.1)).hasMessageContaining("-0.1");
        assertThatThrownBy(() -> new Route(List.of(HERE), 0.9)).hasMessageContaining("2 points at least, not 1");
        assertThatThrownBy(() -> new Route(List.of(HERE, HERE), 0.5)).hasMessageContaining("above 0.5");
        assertThatThrownBy(() -> new Route(List.of(HERE, new Access(1, true, 0.1, 0)), 1)).hasMessageContaining("below 1");
        assertThatThrownBy(() -> new Route(List.of(HERE, HERE), 0.9).groups(Odds.of(1, 1))).hasMessageContaining("2 suspects");
    }
}
