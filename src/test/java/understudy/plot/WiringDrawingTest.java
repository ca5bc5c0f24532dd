package understudy.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import understudy.rig.Coupling;
import understudy.rig.Divider;
import understudy.rig.Spread;

class WiringDrawingTest {

    private static final Coupling CAPACITOR = new Coupling.Capacitor(new Spread(10e-6, 0.2));
    private static final Coupling TRANSFORMER = new Coupling.Transformer(Spread.exactly(1), new Spread(2, 0.3),
            new Spread(90, 0.1), new Spread(95, 0.1), 0.005);

    @TempDir
    private Path folder;

    private static Divider divider(Coupling coupling) {
        return new Divider(new Spread(18e3, 0.01), Optional.of(new Spread(4.7e3, 0.01)), coupling);
    }

    @Test
    void onePinStraight() {
        assertThat(String.join("\n", WiringDrawing.text(divider(new Coupling.Direct()), false))).isEqualTo("""
                jack, tip    o---[R1 18 kohm]---------------------+---o  signal clip, LAST
                                                                  |
                                                            [R2 4.7 kohm]
                                                                  |
                jack, sleeve o------------------------------------+---o  ground clip, FIRST
                Measure the pin. Ground clip on first, signal clip last; off in reverse.""");
    }

    @Test
    void pairHasATwinOfEachInItsReturn() {
        assertThat(String.join("\n", WiringDrawing.text(divider(CAPACITOR), true))).isEqualTo("""
                jack, tip    o---[R1 18 kohm]---[C1 10 uF]--------+---o  signal clip, LAST
                                                                  |
                                                            [R2 4.7 kohm]
                                                                  |
                jack, sleeve o---[R3 18 kohm]---[C2 10 uF]--------+---o  return clip, FIRST
                Measure both pins. Return clip on first, signal clip last; off in reverse.""");
        assertThat(WiringDrawing.parts(divider(CAPACITOR), true, 0.5)).isEqualTo(List.of(
                "R1, R3  series    18 kohm 1 %, 0.5 W or more, two alike",
                "R2      shunt     4.7 kohm 1 %, 0.5 W or more",
                "C1, C2  capacitor 10 uF 20 %, 35 V or more, two alike; any + side to the clip"));
    }

    @Test
    void transformerWithoutShunt() {
        Divider divider = new Divider(new Spread(1e3, 0.01), Optional.empty(), TRANSFORMER);
        assertThat(String.join("\n", WiringDrawing.text(divider, true))).isEqualTo("""
                jack, tip    o---[R1 1 kohm]---[T1 1:1]---o  signal clip, LAST
                jack, sleeve o-----------------[T1 1:1]---o  return clip, FIRST
                Measure both pins. Return clip on first, signal clip last; off in reverse.""");
    }

    @Test
    void transformerThatIsNotOneToOne() {
        Coupling down = new Coupling.Transformer(Spread.exactly(0.2), new Spread(2, 0.3), new Spread(90, 0.1),
                new Spread(5, 0.1), 0.005);
        Divider divider = new Divider(new Spread(1e3, 0.01), Optional.of(new Spread(470, 0.01)), down);
        assertThat(WiringDrawing.text(divider, false).get(0))
                .isEqualTo("jack, tip    o---[R1 1 kohm]---[T1 5:1]-----------+---o  signal clip, LAST");
        assertThat(WiringDrawing.parts(divider, false, 0.5)).last()
                .isEqualTo("T1      isolation transformer 5:1; at the jack 2 H 30 % and 90 ohm 10 %, at the clips 5 ohm 10 %");
    }

    @Test
    void svgShowsEveryPartOnceWithItsValueInsideTheDrawing() throws Exception {
        for (boolean pair : new boolean[] {false, true}) {
            for (Coupling coupling : List.of(new Coupling.Direct(), CAPACITOR, TRANSFORMER)) {
                boolean twin = pair && coupling != TRANSFORMER;
                Path file = folder.resolve("box.svg");
                WiringDrawing.writeSvg(divider(coupling), pair, file);
                Document svg = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file.toFile());
                NodeList texts = svg.getElementsByTagName("text");
                List<String> words = new ArrayList<>();
                for (int i = 0; i < texts.getLength(); i++) {
                    words.add(texts.item(i).getTextContent());
                    int x = Integer.parseInt(texts.item(i).getAttributes().getNamedItem("x").getNodeValue());
                    assertThat(x).isBetween(0, 900);
                }
                assertThat(words).containsOnlyOnce("R1", "R2", "4.7 k\u03a9", "on FIRST", "on LAST", "audio jack");
                assertThat(words.stream().filter("18 k\u03a9"::equals)).hasSize(twin ? 2 : 1);
                assertThat(words.contains("R3")).isEqualTo(twin);
                assertThat(words.contains("C1")).isEqualTo(coupling == CAPACITOR);
                assertThat(words.contains("C2")).isEqualTo(coupling == CAPACITOR && pair);
                assertThat(words.contains("T1")).isEqualTo(coupling == TRANSFORMER);
                assertThat(words.contains("ground clip")).isEqualTo(!pair && coupling != TRANSFORMER);
            }
        }
        try (var left = Files.list(folder)) {
            assertThat(left).hasSize(1);
        }
    }
}
