package understudy;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import understudy.audio.Player;
import understudy.audio.WavRender;

/** The house rules that the compiler doesn't know: which room may know which, and what may not happen in the engine. */
class HouseTest {

    /** The floors of the house from the ground up; a room knows only rooms on floors below its own. */
    private static final List<List<String>> FLOORS = List.of(
            List.of("refusal"),
            List.of("quantity"),
            List.of("text"),
            List.of("pattern"),
            List.of("rig", "reading"),
            List.of("trace"),
            List.of("motion"),
            List.of("wave"),
            List.of("measure"),
            List.of("audio"),
            List.of("calibrate"),
            List.of("store"),
            List.of("preflight"),
            List.of("bench"),
            List.of("plot", "guide"),
            List.of("question"),
            List.of("hunt", "sweep"),
            List.of("report"),
            List.of("view"),
            List.of("cli", "panel"));

    /** Libraries that one room keeps to itself, so that a change of library is a change of one room. */
    private static final Map<String, Set<String>> CONFINED = Map.ofEntries(
            Map.entry("javax.sound..", Set.of("audio")),
            Map.entry("java.sql..", Set.of("store")),
            Map.entry("org.sqlite..", Set.of("store")),
            Map.entry("picocli..", Set.of("cli")),
            Map.entry("org.jline..", Set.of("cli")),
            Map.entry("com.fasterxml.jackson..", Set.of("cli", "store", "text", "view", "panel")),
            Map.entry("org.jtransforms..", Set.of("measure")),
            Map.entry("org.snakeyaml..", Set.of("text", "pattern", "reading", "trace")),
            Map.entry("org.knowm..", Set.of("plot")),
            Map.entry("org.apache.batik..", Set.of("plot")),
            Map.entry("org.commonmark..", Set.of("guide")),
            Map.entry("com.openhtmltopdf..", Set.of("report")),
            Map.entry("org.apache.pdfbox..", Set.of("report")),
            Map.entry("org.apache.fontbox..", Set.of("report")),
            Map.entry("java.awt..", Set.of("plot", "guide")));

    /** The methods of Math whose result the Java specification fixes to the last bit. */
    private static final Set<String> EXACT_MATH = Set.of(
            "abs", "max", "min", "floor", "ceil", "rint", "round", "sqrt", "fma", "signum", "copySign", "ulp", "nextUp",
            "nextDown", "nextAfter", "scalb", "getExponent", "floorMod", "floorDiv", "toIntExact", "addExact",
            "subtractExact", "multiplyExact", "incrementExact", "negateExact", "multiplyHigh", "toRadians", "toDegrees");

    private static final JavaClasses HOUSE =
            new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("understudy");

    @Test
    void everyRoomStandsOnAFloor() {
        List<String> rooms = FLOORS.stream().flatMap(List::stream).map(room -> "understudy." + room).toList();
        assertThat(HOUSE).isNotEmpty().allSatisfy(type -> assertThat(rooms).contains(room(type.getPackageName())));
    }

    /** The room of a package; a large room has folders. */
    private static String room(String packageName) {
        return packageName.replaceFirst("^(understudy\\.\\w+)\\..*", "$1");
    }

    @Test
    void arrowsPointDown() {
        for (int floor = 0; floor < FLOORS.size(); floor++) {
            for (String room : FLOORS.get(floor)) {
                mustNotKnow(room, floor).check(HOUSE);
            }
        }
    }

    /** The terminal knows no command; commands of signals, the terminal only; those of rigs and hunts, both. */
    @Test
    void arrowsPointDownWithinTheCommandLine() {
        List<List<String>> folders = List.of(List.of("terminal"), List.of("signal"), List.of("rig", "hunt"));
        for (int floor = 0; floor < folders.size(); floor++) {
            for (String folder : folders.get(floor)) {
                List<String> forbidden = new ArrayList<>(List.of("understudy.cli"));
                folders.subList(floor, folders.size()).forEach(above -> above.forEach(other -> forbidden.add("understudy.cli." + other)));
                forbidden.remove("understudy.cli." + folder);
                noClasses().that().resideInAPackage("understudy.cli." + folder)
                        .should().dependOnClassesThat().resideInAnyPackage(forbidden.toArray(String[]::new)).check(HOUSE);
            }
        }
    }

    @Test
    void anArrowThatPointsUpIsSeen() {
        // the top floor judged as if it were the ground floor: whatever it knows, the rule must object to
        assertThatThrownBy(() -> mustNotKnow("cli", 0).check(HOUSE)).isInstanceOf(AssertionError.class);
    }

    private static ArchRule mustNotKnow(String room, int floor) {
        List<String> forbidden = new ArrayList<>();
        FLOORS.subList(floor, FLOORS.size()).forEach(rooms -> rooms.forEach(other -> forbidden.add("understudy." + other + "..")));
        forbidden.remove("understudy." + room + "..");
        return noClasses().that().resideInAPackage("understudy." + room + "..")
                .should().dependOnClassesThat().resideInAnyPackage(forbidden.toArray(String[]::new))
                .allowEmptyShould(true);
    }

    @Test
    void librariesStayInTheirRooms() {
        CONFINED.forEach((library, rooms) -> noClasses()
                .that().resideOutsideOfPackages(rooms.stream().map(room -> "understudy." + room + "..").toArray(String[]::new))
                .should().dependOnClassesThat().resideInAPackage(library)
                .check(HOUSE));
    }

    /** What a front end calls a control, or how a command is typed, is that front end's own; guide pages are written for it. */
    @Test
    void roomsBelowTheFrontEndsKnowNoneOfTheirWords() throws IOException {
        java.util.regex.Pattern word = java.util.regex.Pattern.compile("\"([^\"]*[^\"\\w-])?--[a-z][a-z-]+|'understudy [a-z]");
        try (Stream<Path> files = Files.walk(Path.of("src/main/java/understudy"))) {
            assertThat(files.filter(file -> file.toString().endsWith(".java"))
                    .filter(file -> !file.toString().matches(".*/(cli|panel)/.*")))
                    .isNotEmpty()
                    .allSatisfy(file -> assertThat(Files.readString(file)).doesNotContainPattern(word));
        }
    }

    @Test
    void onlyMainEndsTheProcess() {
        noClasses().that().doNotHaveFullyQualifiedName("understudy.cli.Main")
                .should().callMethod(System.class, "exit", int.class)
                .orShould().callMethod(Runtime.class, "exit", int.class)
                .orShould().callMethod(Runtime.class, "halt", int.class)
                .check(HOUSE);
    }

    /** Limits, level and consent are checked at one door. */
    @Test
    void onlyTheBenchAndTheCalibrationMakeALineSound() {
        noClasses().that().resideOutsideOfPackages("understudy.bench..", "understudy.calibrate..", "understudy.audio..")
                .should().callMethodWhere(DescribedPredicate.describe("it opens a player", call ->
                        call.getTargetOwner().isEquivalentTo(Player.class) && call.getName().equals("open")))
                .orShould().callMethodWhere(DescribedPredicate.describe("it writes samples", call ->
                        call.getTargetOwner().isEquivalentTo(WavRender.class)))
                .check(HOUSE);
    }

    @Test
    void samplesAreTheSameOnEveryMachine() {
        noClasses().that().resideInAnyPackage("understudy.motion", "understudy.wave", "understudy.audio")
                .should().callMethodWhere(inexactMath())
                .because("Math.sin and its like may differ in the last bit from one machine to the next; StrictMath may not")
                .check(HOUSE);
    }

    private static DescribedPredicate<JavaCall<?>> inexactMath() {
        return DescribedPredicate.describe("the result may differ between machines", call ->
                call.getTargetOwner().isEquivalentTo(Math.class) && !EXACT_MATH.contains(call.getName()));
    }

    @Test
    void noRoomOfLeftovers() {
        noClasses().should().haveSimpleNameEndingWith("Manager")
                .orShould().haveSimpleNameEndingWith("Impl")
                .orShould().haveSimpleNameEndingWith("Util")
                .orShould().haveSimpleNameEndingWith("Utils")
                .orShould().haveSimpleNameEndingWith("Helper")
                .check(HOUSE);
    }
}
