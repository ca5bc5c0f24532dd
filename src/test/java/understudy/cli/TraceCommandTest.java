package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.cli.terminal.ExitCode;
import understudy.store.Store;
import understudy.text.Paragraph;
import understudy.trace.Answer;
import understudy.trace.Conclusion;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Numbered;

/** Whole hunts in the terminal, rehearsed silently, on vehicles whose fault is known. */
class TraceCommandTest {

    static final List<String> POINTS =
            List.of("sensor connector", "tunnel connector", "bulkhead connector", "splice", "module pin");
    private static final String CIRCUIT = "fieldhand-4-speedometer";

    @TempDir
    private Path home;

    private TraceBench vehicle(int fault) {
        return new TraceBench(home, POINTS, fault);
    }

    private Hunt kept(String name) {
        try (Store store = Run.in(home).store()) {
            return Hunt.of(store.jobs().find(name));
        }
    }

    private static <E extends Entry> List<E> entries(Hunt hunt, Class<E> kind) {
        return hunt.events().stream().map(Numbered::entry).filter(kind::isInstance).map(kind::cast).toList();
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\s+", " ");
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5})
    void whateverIsBadIsFoundRepairedAndClosed(int fault) {
        TraceBench.Outcome trace = vehicle(fault).understudy("trace", CIRCUIT, "--to", "silent", "--job", "hunt");
        assertThat(trace.err()).isEmpty();
        assertThat(trace.exitCode()).isZero();
        Hunt hunt = kept("hunt");
        assertThat(hunt.finding().suspects()).singleElement().satisfies(suspect -> assertThat(suspect.index()).isEqualTo(fault));
        assertThat(hunt.finding().decided()).isTrue();
        assertThat(hunt.repairProven()).isTrue();
        assertThat(hunt.clashes()).isEmpty();
        String found = Conclusion.of(hunt).result();
        assertThat(found).contains(fault == 0 ? "The circuit is sound" : hunt.circuit().suspects().get(fault).name());
        // the sentence that the report prints
        assertThat(oneLine(trace.out())).contains("FOUND: " + found);
        assertThat(trace.out()).contains("\nFor the report:\n  understudy report \"hunt\"\n");
        assertThat(trace.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(Paragraph.width()));
        assertThat(entries(hunt, Entry.Proven.class)).as("only a module must be proven").hasSize(fault == 5 ? 6 : 0);
    }

    @Test
    void whatIsNotToldIsAsked() {
        TraceBench.Outcome trace = vehicle(2).answering("Complaint: ", "drops to zero").answering("Who ", "the class")
                .answering("Name of the job", "").leavingAfter(4).understudy("trace", CIRCUIT, "--to", "silent");
        assertThat(trace.exitCode()).isZero();
        assertThat(trace.prompts()).startsWith("Vehicle (Enter: Fieldhand 4): ", "Complaint: ", "Who does the work: ",
                "Name of the job (Enter: fieldhand-4-speedometer-2026-03-01): ");
        assertThat(trace.out()).endsWith("\nNothing plays, and the job is kept. Go on with:\n"
                + "  understudy trace --resume \"fieldhand-4-speedometer-2026-03-01\" --to silent\n");
        Hunt hunt = kept("fieldhand-4-speedometer-2026-03-01");
        assertThat(hunt.job().vehicle()).isEqualTo("Fieldhand 4");
        assertThat(hunt.job().complaint()).isEqualTo("drops to zero");
        assertThat(hunt.job().who()).isEqualTo("the class");
        assertThat(vehicle(2).leavingAfter(3).understudy("trace", CIRCUIT, "--to", "silent").prompts())
                .as("a name that is free").contains("Name of the job (Enter: fieldhand-4-speedometer-2026-03-01-2): ");
    }

    @Test
    void whoStopsBeforeThereIsAJobBeginsNone() {
        TraceBench.Outcome trace = vehicle(2).answering("Complaint: ", "stop").understudy("trace", CIRCUIT, "--to", "silent");
        assertThat(trace.exitCode()).isZero();
        assertThat(trace.out()).endsWith("No job was begun.\n");
        try (Store store = Run.in(home).store()) {
            assertThat(store.jobs().list(false)).isEmpty();
        }
    }

    /** The input ends at every prompt of a hunt in turn; what comes next goes on from there. */
    @Test
    void aHuntThatIsLeftAtEveryPromptEndsAsOneThatIsNot() {
        vehicle(2).understudy("trace", CIRCUIT, "--to", "silent", "--job", "in one go");
        vehicle(2).leavingAfter(14).understudy("trace", CIRCUIT, "--to", "silent", "--job", "in pieces");
        int sessions = 0;
        TraceBench bench = vehicle(2);
        while (entries(kept("in pieces"), Entry.Closed.class).isEmpty()) {
            int steps = kept("in pieces").events().size();
            // 1, 2, 3, 4 answers by turns: whatever the prompt, some session ends there
            TraceBench.Outcome trace = bench.leavingAfter(1 + sessions % 4).understudy("trace", "--resume", "In Pieces", "--to", "silent");
            assertThat(trace.exitCode()).isZero();
            assertThat(trace.err()).isEmpty();
            assertThat(kept("in pieces").events().size()).as("nothing is lost").isGreaterThanOrEqualTo(steps);
            assertThat(++sessions).isLessThan(60);
        }
        assertThat(sessions).isGreaterThan(7);
        Hunt whole = kept("in one go");
        Hunt pieces = kept("in pieces");
        assertThat(pieces.finding().suspects()).isEqualTo(whole.finding().suspects());
        assertThat(pieces.repairProven()).isTrue();
        assertThat(pieces.clashes()).isEmpty();
    }

    @Test
    void noPinIsClippedOnToWithMoreOnItThanItBears() {
        TraceBench.Outcome trace = vehicle(2).answering("Volts", "twelve", "13.9", "4.2 V", "-2", "0.1").leavingAfter(16)
                .understudy("trace", CIRCUIT, "--to", "silent", "--job", "hot", "--vehicle", "v", "--complaint", "c", "--who", "w");
        String said = oneLine(trace.out());
        assertThat(said).contains("\"twelve\" is not a voltage; write a voltage like 2.5 V.")
                .contains("REFUSED: allowed are -0.3 V to 0.3 V (this input holds its pin at ground)."
                        + " That is the battery's voltage: a short to battery, or a wrong pin. Stop: do not clip on.")
                .contains("Something feeds the pin: a short to a supply,")
                .contains("The pin lies below ground: the meter's leads are swapped,");
        assertThat(entries(kept("hot"), Entry.PinMeasured.class)).extracting(Entry.PinMeasured::volts)
                .containsExactly(13.9, 4.2, -2.0, 0.1);
        assertThat(trace.prompts().indexOf("Clip on: ground clip first, signal clip last. Then press Enter, and it plays: "))
                .as("nobody is told to clip on before").isGreaterThan(12);
        assertThat(entries(kept("hot"), Entry.Injected.class)).hasSize(1);
    }

    @Test
    void aReadingThatCannotBeIsAskedAgain() {
        TraceBench.Outcome trace = vehicle(2).answering("What does the display show", "40 rpm", "4000", "400", "many", "", "25 mph")
                .answering("Is it 400 km/h", "perhaps", "no").leavingAfter(20)
                .understudy("trace", CIRCUIT, "--to", "silent", "--job", "units", "--vehicle", "v", "--complaint", "c", "--who", "w");
        String said = oneLine(trace.out());
        assertThat(said).contains("\"40 rpm\" is ").contains("\"many\" is not ").contains("\"perhaps\" is neither yes nor no; type yes or no.")
                .contains("Is it 400 km/h, and not 40 km/h? yes or no: perhaps")
                .contains("Type what the display shows; nothing, if it shows nothing.").contains("25 mph is 40.23 km/h.");
        assertThat(entries(kept("units"), Entry.Injected.class).get(0).answer()).satisfies(answer -> {
            assertThat(answer.kind()).isEqualTo(Answer.Kind.VALUE);
            // a mile is 1.609344 km
            assertThat(answer.value()).isEqualTo(25 * 1.609344);
        });
    }

    @Test
    void aMethodThatIsNotProvenHoldsTheHuntUp() {
        TraceBench.Outcome trace = vehicle(2).answering("What does the display show", "nothing", "0")
                .answering("Press Enter to inject there again", "", "later", "go on").answering("Why do you go on", "", "no sister circuit")
                .understudy("trace", CIRCUIT, "--to", "silent", "--job", "unproven");
        assertThat(oneLine(trace.out())).contains("Rig and method are not proven, so nothing that reads bad on the suspect circuit")
                .contains("  - the polarity: try the two wires the other way round".strip())
                .contains("A few words are needed here");
        Hunt hunt = kept("unproven");
        assertThat(entries(hunt, Entry.Injected.class).subList(0, 3)).extracting(injected -> injected.place().onReference())
                .containsExactly(true, true, false);
        assertThat(entries(hunt, Entry.WentOn.class)).containsExactly(new Entry.WentOn("no sister circuit"));
        assertThat(oneLine(trace.out())).contains("Rig and method were not proven on a circuit that works.");
    }

    @Test
    void contradictionsAreNamedAndCanBeWithdrawn() {
        // the tunnel connector is bad; at the module's pin the clip slips
        TraceBench bench = vehicle(2).answering("Volts on the pin|The clips are on", "0.1", "other 5", "0.1", "other 3", "0.1",
                "other 5", "0.1", "withdraw 99", "withdraw 9").answering("What does the display show", "40", "40", "40", "nothing")
                .answering("Why does it not count", "the clip had slipped");
        TraceBench.Outcome trace = bench.understudy("trace", CIRCUIT, "--to", "silent", "--job", "clash");
        assertThat(oneLine(trace.out())).contains("Step 9 (module pin, bad) contradicts step 5 (module pin, good) and step 7"
                + " (bulkhead connector, good): with one fault")
                .contains("There is no step 99; there are 1 to 9.");
        assertThat(trace.out()).contains("no longer counts; it stays in the record.");
        Hunt hunt = kept("clash");
        assertThat(entries(hunt, Entry.Withdrawn.class)).containsExactly(new Entry.Withdrawn(9, "the clip had slipped"));
        assertThat(hunt.clashes()).isEmpty();
        assertThat(hunt.finding().suspects().get(0).index()).isEqualTo(2);
    }

    @Test
    void levelVoltsAndWhatWasMovedStandInTheRecord() {
        TraceBench bench = vehicle(2).answering("Volts on the pin", "0.1", "other 2", "0.1", "other 1", "0.1")
                .answering("What does the display show", "40", "level 30", "level 0 %", "volts 0.2 V", "moves", "volts 5 mV", "erratic")
                .answering("Which of these was moved", "9", "1");
        TraceBench.Outcome trace = bench.leavingAfter(34).understudy("trace", CIRCUIT, "--to", "silent", "--job", "low",
                "--vehicle", "v", "--complaint", "c", "--who", "w");
        List<Entry.Injected> injected = entries(kept("low"), Entry.Injected.class);
        assertThat(injected.get(0).levelPart()).isEqualTo(1);
        assertThat(injected.get(1).levelPart()).isEqualTo(0.3);
        assertThat(injected.get(1).answer()).isEqualTo(Answer.of(Answer.Kind.COMES_AND_GOES));
        assertThat(injected.get(1).moved()).isEqualTo(Optional.of(2));
        assertThat(injected.get(1).clipPart()).isPresent();
        String said = oneLine(trace.out());
        assertThat(said).contains("It plays at 30 % of its level now.").contains("0 % is out of range; allowed are 1 % to 100 %")
                .contains("\"9\" is none of them; type a number from 1 to 4, or Enter.")
                .contains("That was at a level of 30 %. It is a fair test only if");
        assertThat(injected.get(2).levelPart()).as("the next one plays in full again").isEqualTo(1);
        assertThat(said).as("a collapsed signal does not count").contains("sensor connector: UNDECIDED. Only 1 % of the volts");
    }

    @Test
    void aModuleThatFailsAProofIsNotCondemned() {
        TraceBench.Outcome trace = vehicle(5).answering("^grounds: ", "no, 0.4 V under load", "0.02 V now").answering("^power: ", "")
                .understudy("trace", CIRCUIT, "--to", "silent", "--job", "module");
        Hunt hunt = kept("module");
        assertThat(oneLine(trace.out())).contains("It is not convicted yet: each of these alone makes a sound module look dead.")
                .contains("Then the module may be sound. Mend that first").contains("Still to be proven: power, grounds.");
        assertThat(entries(hunt, Entry.Noted.class)).contains(new Entry.Noted("grounds not as it should be: no, 0.4 V under load"));
        assertThat(entries(hunt, Entry.Proven.class)).hasSize(6);
    }

    @Test
    void theWordsThatGoEverywhereAreExplained() {
        TraceBench.Outcome trace = vehicle(2).answering("Caution 1 of 9", "?", "where", "other", "withdraw", "note seen at noon", "no")
                .answering("Caution 9 of 9", "stop").understudy("trace", CIRCUIT, "--to", "silent", "--job", "words");
        assertThat(trace.out()).containsPattern("\n  stop +leaves; the job is kept, and you can resume it\n")
                .contains("\nJob \"words\": Speedometer signal, gearbox to module\n")
                .contains("\n  1  sensor connector, 4 min\n");
        assertThat(oneLine(trace.out())).contains("Nothing can be injected now; read and tick the cautions first")
                .contains("Nothing has happened yet; there is nothing to take back").contains("Kept as step 1.")
                .contains("Without that nothing can be injected.").endsWith("--resume \"words\" --to silent ");
    }

    @Test
    void aFileTakesEachInjection() {
        vehicle(2).leavingAfter(20).understudy("trace", CIRCUIT, "--to", home.resolve("hunt.wav").toString(), "--job", "file");
        int injections = entries(kept("file"), Entry.Injected.class).size();
        assertThat(injections).isPositive();
        for (int number = 1; number <= injections; number++) {
            assertThat(home.resolve("hunt-" + number + ".wav")).exists();
        }
        assertThat(home.resolve("hunt.wav")).doesNotExist();
    }

    @Test
    void whatCannotBeIsRefusedBeforeAnythingIsAsked() {
        assertThat(refused("trace")).isEqualTo("trace: CIRCUIT is missing; give a circuit, or --resume JOB to go on with a job\n");
        assertThat(refused("trace", "fieldhand-4-speedo")).contains("there is no circuit of this name; did you mean");
        assertThat(refused("trace", CIRCUIT, "--resume", "x")).contains("--resume: the job has its circuit, reading, name");
        assertThat(refused("trace", "--resume", "x")).contains("there is no job called \"x\"");
        assertThat(refused("trace", CIRCUIT, "--to", "silent", "--device", "USB")).contains("it does not go together with --device");
        assertThat(refused("trace", CIRCUIT, "--to", "silent", "--input", "resolver")).contains("--input: ");
        assertThat(refused("trace", CIRCUIT, "--to", "silent", "--rig", "none")).contains("none");
        vehicle(2).understudy("trace", CIRCUIT, "--to", "silent", "--job", "done");
        assertThat(refused("trace", "--resume", "done")).contains("--resume: job \"done\" is closed;");
        assertThat(refused("trace", CIRCUIT, "--to", "silent", "--job", "Done", "--vehicle", "v", "--complaint", "c", "--who", "w"))
                .contains("there is a job called \"Done\" already; give another name");
    }

    @Test
    void aRigsVoltsAndLimitsHoldHereAsWhenPlaying() {
        Run.in(home).understudy("rig", "make", "paper", "--series", "10 kohm 1%", "--shunt", "11 kohm 1%");
        assertThat(refused("trace", CIRCUIT, "--to", "silent", "--rig", "paper")).contains("add --fit to have all outputs scaled down");
        TraceBench.Outcome trace = vehicle(2).answering("What does the display show", "volts 0.2 V").leavingAfter(18)
                .understudy("trace", CIRCUIT, "--to", "silent", "--rig", "paper", "--fit", "--job", "rig");
        assertThat(trace.err()).isEmpty();
        assertThat(oneLine(trace.out())).contains("rig paper: full scale ").contains("rig paper on reluctor-adaptive: volts are at the pins")
                .endsWith("understudy trace --resume \"rig\" --to silent --fit ");
        Hunt hunt = kept("rig");
        assertThat(hunt.job().equipment().rig()).contains("paper");
        assertThat(hunt.job().equipment().input()).contains("reluctor-adaptive");
        assertThat(hunt.job().equipment().words()).anyMatch(words -> words.startsWith("divider: series 10 kohm"));
        assertThat(refused("trace", "--resume", "rig", "--rig", "other")).contains("leave --rig and --input out");
        Run.in(home).understudy("rig", "make", "bare", "--series", "100 ohm", "--shunt", "11 kohm");
        assertThat(refused("trace", CIRCUIT, "--to", "silent", "--rig", "bare", "--fit")).contains("mA");
    }

    @Test
    void thePlanBeginsAsTheHuntDoesAndTellsWhatItSaves() {
        Run.Outcome plan = Run.in(home).understudy("trace", "--plan", CIRCUIT);
        assertThat(plan.err()).isEmpty();
        assertThat(plan.exitCode()).isZero();
        assertThat(plan.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(Paragraph.width()));
        String first = first(plan.out(), "(?m)^inject at ([^,]+), ");
        TraceBench.Outcome hunt = vehicle(2).leavingAfter(17).understudy("trace", CIRCUIT, "--to", "silent");
        assertThat(first(hunt.out(), "Now the suspect circuit\\.\\s+NEXT: ([^.]+)\\.")).isEqualTo(first);
        double planned = Double.parseDouble(first(plan.out(), "by this plan +([\\d.]+)"));
        assertThat(planned).isLessThan(Double.parseDouble(first(plan.out(), "end to end, from the sensor on +([\\d.]+)")))
                .isLessThan(Double.parseDouble(first(plan.out(), "by plain halving +([\\d.]+)")));
        assertThat(refused("trace", "--plan", "--resume", "x")).contains("--plan: it is of a circuit");
    }

    private static String first(String text, String pattern) {
        return Pattern.compile(pattern).matcher(text).results().findFirst().orElseThrow().group(1);
    }

    private String refused(String... args) {
        TraceBench.Outcome trace = vehicle(2).understudy(args);
        assertThat(trace.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(trace.prompts()).isEmpty();
        return trace.err();
    }
}
