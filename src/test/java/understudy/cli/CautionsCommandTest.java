package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.pattern.Hazard;
import understudy.text.Paragraph;

class CautionsCommandTest {

    @TempDir
    private Path home;

    @Test
    void everyCautionIsToldInFull() {
        String told = unwrapped(Run.in(home).understudy("cautions").out());
        for (Hazard hazard : Hazard.values()) {
            assertThat(told).contains(hazard.title()).contains(hazard.whatCanHappen()).contains(hazard.whatToDo());
        }
    }

    @Test
    void ofAPatternOnlyWhatAppliesToItAndItsOwnFirst() throws IOException {
        String wheel = Samples.write(home, "wheel.yaml", Samples.WHEEL
                + "hazards: [road-speed]\ncautions: [\"Mind the hat of the bench.\"]\n").toString();
        String told = unwrapped(Run.in(home).understudy("cautions", wheel).out());
        assertThat(told).startsWith("Cautions for Test wheel 4-1 For this pattern Mind the hat of the bench. "
                + Hazard.ROAD_SPEED.title());
        assertThat(told).contains(Hazard.AIRBAGS.title()).doesNotContain(Hazard.CRANK.title());
    }

    @Test
    void noLineIsWiderThanTheScreen() {
        assertThat(Run.in(home).understudy("cautions").out().lines())
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(Paragraph.width()));
    }

    private static String unwrapped(String text) {
        return text.replaceAll("\\s+", " ");
    }
}
