package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.cli.terminal.ExitCode;
import understudy.store.JobSamples;
import understudy.store.Store;
import understudy.trace.Answer;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Job;
import understudy.trace.Place;
import understudy.trace.Subjects;

/** Jobs listed, shown, written out, taken in, put away and removed from the command line, in a real file. */
class JobsCommandTest {

    @TempDir
    private Path home;

    private Run.Outcome jobs(String... words) {
        return Run.in(home).understudy(Stream.concat(Stream.of("jobs"), Stream.of(words)).toArray(String[]::new));
    }

    private Store store() {
        return Store.open(Run.in(home).folders().data().resolve("understudy.db"));
    }

    private String file(String name) {
        return home.resolve(name).toString();
    }

    /** Two injections on the suspect circuit: good at the splice, nothing at the bulkhead connector; and what else there is. */
    @BeforeEach
    void keepAJob() {
        try (Store store = store()) {
            Hunt hunt = store.jobs().begin(JobSamples.fresh("speedometer, May"));
            hunt = add(store, hunt, new Entry.Cautioned(hunt.hazards()));
            hunt = add(store, hunt, new Entry.WentOn("no other circuit; \"here\""));
            hunt = add(store, hunt, new Entry.PinMeasured(new Place(false, 3), 0.25));
            hunt = add(store, hunt, injected(hunt, 3, Answer.value(40), 1));
            hunt = add(store, hunt, new Entry.PinMeasured(new Place(false, 2), -0.1));
            hunt = add(store, hunt, injected(hunt, 2, Answer.of(Answer.Kind.NOTHING), 0.3));
            hunt = add(store, hunt, new Entry.Withdrawn(6, "=clip slipped"));
        }
    }

    private static Hunt add(Store store, Hunt hunt, Entry entry) {
        return store.jobs().add(hunt, JobSamples.NOON.plusSeconds(60L * hunt.job().events().size()), entry);
    }

    private static Entry injected(Hunt hunt, int point, Answer answer, double level) {
        Subjects.Subject subject = hunt.subjects().suspect();
        return new Entry.Injected(new Place(false, point), subject.speedHz(), subject.frequencyHz(subject.speedHz()), level,
                subject.expected(subject.speedHz()), answer, Optional.empty(), Optional.empty());
    }

    @Test
    void theLatestComesFirstAndWordsFindIt() {
        try (Store store = store()) {
            store.jobs().begin(JobSamples.fresh("another"));
        }
        String may = "speedometer, May  2026-03-01 12:06 UTC  Fieldhand 4, bench  hunting\n";
        String another = "another           2026-03-01 12:00 UTC  Fieldhand 4, bench  begun\n";
        assertThat(jobs().out()).isEqualTo(may + another);
        assertThat(jobs("list").out()).isEqualTo(may + another);
        assertThat(jobs("list", "SLIPPED", "bench").out()).isEqualTo(may);
        assertThat(jobs("list", "--most", "1").out()).isEqualTo(may + "and 1 more; add words to search for, or --most 2\n");
        assertThat(jobs("list", "nowhere").out()).isEqualTo("No job has all these words; --all looks among the archived ones too.\n");
        assertThat(jobs("list", "--json", "slipped").out()).contains("\"name\" : \"speedometer, May\"")
                .contains("\"state\" : \"hunting\"").contains("\"events\" : 7");
    }

    @Test
    void whereThereIsNoneOneIsToldHowToBegin() {
        jobs("remove", "speedometer, May", "--yes", "speedometer, May");
        assertThat(jobs().out()).isEqualTo("There is no job yet; begin one with 'understudy trace CIRCUIT'.\n");
    }

    @Test
    void aJobIsShownWhole() {
        Run.Outcome shown = jobs("show", "SPEEDOMETER, may");
        assertThat(shown.exitCode()).isZero();
        assertThat(shown.out()).startsWith("""
                job        speedometer, May
                begun      2026-03-01 12:00 UTC
                vehicle    Fieldhand 4, bench
                complaint  drops to zero on rough ground
                who        the instructor
                circuit    Speedometer signal, gearbox to module
                reference  Rear left wheel-speed signal, wheel to module
                with       rig bench
                with       played silently
                state      hunting

                what happened:
                  1  2026-03-01 12:00 UTC  the cautions were read and ticked
                  2  2026-03-01 12:01 UTC  went on without a proven method: no other circuit;
                     "here"
                  3  2026-03-01 12:02 UTC  splice: 0.25 V on the pin
                  4  2026-03-01 12:03 UTC  splice: GOOD. 40 km/h is shown; expected: 39.5 km/h,
                     good from 38 to 41: the signal arrives.
                  5  2026-03-01 12:04 UTC  bulkhead connector: -0.1 V on the pin
                  6  2026-03-01 12:05 UTC  (withdrawn) bulkhead connector: BAD, at a level of 30
                     %. Nothing is displayed; expected: 39.5 km/h, good from 38 to 41: the
                     signal does not arrive.
                  7  2026-03-01 12:06 UTC  step 6 does not count: =clip slipped

                suspects:
                """).contains("\n\nnext: ");
        assertThat(shown.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    }

    @Test
    void whatIsWrittenOutIsTakenInAgainWithNothingLost() throws IOException {
        assertThat(jobs("export", "speedometer, May", "--to", file("may.json")).out())
                .isEqualTo("job \"speedometer, May\" is in " + file("may.json") + "\n");
        Run.Outcome again = jobs("export", "speedometer, May", "--to", file("may.json"));
        assertThat(again.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(again.err()).isEqualTo(
                "--to: " + file("may.json") + " is there already; give another name, or add --replace\n");
        assertThat(jobs("export", "speedometer, May", "--to", file("may.json"), "--replace").exitCode()).isZero();
        assertThat(jobs("import", file("may.json")).err()).isEqualTo(file("may.json") + ": there is a job called"
                + " \"speedometer, May\" already; keep this one under another name with --as NAME\n");
        assertThat(jobs("import", file("may.json"), "--as", "copy").out()).isEqualTo("job \"copy\" is kept, with 7 steps\n");
        Job kept;
        try (Store store = store()) {
            kept = store.jobs().find("speedometer, May");
            assertThat(store.jobs().find("copy").events()).isEqualTo(kept.events());
        }
        jobs("remove", "speedometer, May", "--yes", "speedometer, May");
        jobs("import", file("may.json"));
        try (Store store = store()) {
            assertThat(store.jobs().find("speedometer, May")).isEqualTo(kept);
        }
        assertThat(Files.list(home).map(path -> path.getFileName().toString())).as("nothing half-written is left")
                .containsExactlyInAnyOrder("may.json", ".local");
    }

    @Test
    void aSpreadsheetGetsARowForEachStep() throws IOException {
        jobs("export", "speedometer, May", "--to", file("may.csv"));
        // 1400 rpm is 23.3333 turns a second; 17 teeth make 396.667 Hz of it; 3.6 x 1.927 m / 17 / 4.1 x 396.667 Hz = 39.48 km/h,
        // less 3 % and half a step of 1 km/h: 37.8 to 41.2
        assertThat(Files.readString(Path.of(file("may.csv")))).isEqualTo(String.join("\r\n",
                "number,at,counts,kind,circuit,point,pin volts,speed Hz,frequency Hz,level %,expected,least,most,unit,display,"
                        + "displayed,verdict,reason,words",
                "1,2026-03-01T12:00:00Z,yes,cautioned,,,,,,,,,,,,,,,the cautions were read and ticked",
                "2,2026-03-01T12:01:00Z,yes,went-on,,,,,,,,,,,,,,,\"went on without a proven method: no other circuit; \"\"here\"\"\"",
                "3,2026-03-01T12:02:00Z,yes,pin-measured,suspect,splice,0.25,,,,,,,,,,,,",
                "4,2026-03-01T12:03:00Z,yes,injected,suspect,splice,,23.3333333333,396.666666667,100,39.48,38,41,km/h,a value,40,"
                        + "good,\"40 km/h is shown; expected: 39.5 km/h, good from 38 to 41: the signal arrives.\",",
                "5,2026-03-01T12:04:00Z,yes,pin-measured,suspect,bulkhead connector,-0.1,,,,,,,,,,,,",
                "6,2026-03-01T12:05:00Z,withdrawn,injected,suspect,bulkhead connector,,23.3333333333,396.666666667,30,39.48,38,41,"
                        + "km/h,nothing,,bad,\"Nothing is displayed; expected: 39.5 km/h, good from 38 to 41: the signal does not"
                        + " arrive.\",",
                "7,2026-03-01T12:06:00Z,yes,withdrawn,,,,,,,,,,,,,,,step 6 does not count: =clip slipped",
                ""));
    }

    @Test
    void anArchivedJobIsKeptButNotListed() {
        assertThat(jobs("archive", "Speedometer, may").out()).isEqualTo("job \"speedometer, May\" is archived\n");
        assertThat(jobs().out()).isEqualTo("There is no job that is not archived; --all looks among the archived ones too.\n");
        assertThat(jobs("list", "--all").out()).contains("speedometer, May").endsWith("hunting (archived)\n");
        assertThat(jobs("show", "speedometer, May").out()).contains("begun      2026-03-01 12:00 UTC, archived\n");
        assertThat(jobs("unarchive", "speedometer, May").out()).isEqualTo("job \"speedometer, May\" is listed again\n");
        assertThat(jobs().out()).startsWith("speedometer, May");
    }

    @Test
    void removingTakesTheNameSpelledOut() {
        Run.Outcome nobody = jobs("remove", "speedometer, May");
        assertThat(nobody.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(nobody.err()).isEqualTo(
                "jobs remove: nobody is there to be asked; write --yes \"speedometer, May\" to remove it for good\n");
        assertThat(jobs("remove", "speedometer, May", "--yes", "yes").exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        Run.Outcome yes = Run.in(home).atTerminal("yes\n").understudy("jobs", "remove", "speedometer, May");
        assertThat(yes.exitCode()).isEqualTo(ExitCode.FAILED);
        assertThat(yes.out()).isEqualTo(
                "This removes job \"speedometer, May\" with 7 steps for good. Type its name to go on: ");
        assertThat(yes.err()).isEqualTo("nothing was removed\n");
        assertThat(jobs().out()).startsWith("speedometer, May");
        assertThat(Run.in(home).atTerminal("Speedometer, may\n").understudy("jobs", "remove", "speedometer, May").out())
                .endsWith("job \"speedometer, May\" is removed\n");
        assertThat(jobs().out()).startsWith("There is no job yet");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            show;spedometer, May|there is no job called "spedometer, May"; did you mean "speedometer, May"?
            export;x;--to;a.json|there is no job called "x"; list them: 'understudy jobs'
            export;speedometer, May;--to;a.txt|--to: "a.txt" is no name for a job's file; give a name that ends in .json or .csv
            archive;x|there is no job called "x"; list them: 'understudy jobs'
            unarchive;x|there is no job called "x"; list them: 'understudy jobs'
            remove;x;--yes;x|there is no job called "x"; list them: 'understudy jobs'
            import;nowhere.json|nowhere.json: there is no such file; see to its name and folder
            list;--most;0|--most: "0" will not do; give a whole number from 1 to 1000000
            """)
    void whatCannotBeIsSaidAndChangesNothing(String typed, String said) {
        String before = jobs("list", "--json").out();
        Run.Outcome outcome = jobs(typed.split(";"));
        assertThat(outcome.err()).isEqualTo(said + "\n");
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(jobs("list", "--json").out()).isEqualTo(before);
        assertThat(Path.of("a.json")).doesNotExist();
    }

    @Test
    void aWrongCommandIsToldApart() {
        assertThat(jobs("shwo", "x").err()).contains("there is no command 'shwo'; did you mean show?");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            "format" : "understudy job"|"format" : "other"|: this is no job; take a file that was written by 'understudy jobs export'
            "version" : 1|"version" : 2|: version 2 is not known, only 1; a newer Understudy may know it
            "who" : "the instructor"|"who" : 7|: who: "7" will not do; a text belongs there
            "begun" : "2026-03-01T12:00:00Z"|"begun" : "May"|: begun: "May" is no time; write it like 2026-03-01T12:00:00Z
            "pinFromVolts" : -0.3|"pinFromVolts" : 9|: equipment.pinFromVolts: 9.0 is above pinToVolts; swap them
            "kind" : "went-on"|"kind" : "wandered"|: events 2: an entry "wandered" is not known; the file was changed, or damaged; export the job again
            "volts" : "0.25"|"volts" : "250"|: events 4: the pin at splice was not measured, or more lies on it than the input allows; the file was changed, or damaged; export the job again
            "volts" : "0.25"|"volts" : "much"|: events 3: an entry "pin-measured" has "volts: much"; the file was changed, or damaged; export the job again
            "volts" : "0.25"|"volts" : null|: events 3, values.volts is missing; a text belongs there; the file may have been changed; export the job again
            "suspect" : {|"suspekt" : {|: suspect is missing; an object in braces belongs there; the file may have been changed; export the job again
            title: Speedometer|titel: Speedometer|: in it, *
            "vehicle" :|"name" :|:6:*
            }}}|}|:*
            """)
    void aSpoiltFileIsRefusedWithThePlace(String from, String to, String said) throws IOException {
        jobs("export", "speedometer, May", "--to", file("may.json"));
        String text = Files.readString(Path.of(file("may.json")));
        String spoilt = from.equals("}}}") ? text.substring(0, text.length() / 2) : text.replace(from, to);
        assertThat(spoilt).isNotEqualTo(text);
        Files.writeString(Path.of(file("spoilt.json")), spoilt);
        String before = jobs("list", "--json").out();
        Run.Outcome outcome = jobs("import", file("spoilt.json"), "--as", "copy");
        if (said.endsWith("*")) {
            assertThat(outcome.err()).startsWith(file("spoilt.json") + said.replace("*", ""));
        } else {
            assertThat(outcome.err()).isEqualTo(file("spoilt.json") + said + "\n");
        }
        assertThat(outcome.err().lines()).hasSize(1);
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(jobs("list", "--json").out()).isEqualTo(before);
    }

    @Test
    void whatIsNoJobAtAllIsRefused() throws IOException {
        for (byte[] bytes : List.of(new byte[0], "[]".getBytes(StandardCharsets.UTF_8), "Dear diary".getBytes(StandardCharsets.UTF_8),
                new byte[] {(byte) 0xff, (byte) 0xfe, 0}, "{}".getBytes(StandardCharsets.UTF_8), "null".getBytes(StandardCharsets.UTF_8),
                "[".repeat(100_000).getBytes(StandardCharsets.UTF_8))) {
            Files.write(Path.of(file("x.json")), bytes);
            Run.Outcome outcome = jobs("import", file("x.json"));
            assertThat(outcome.exitCode()).as(outcome.err()).isEqualTo(ExitCode.BAD_INPUT);
            assertThat(outcome.err()).startsWith(file("x.json") + ":");
        }
    }

    @Test
    void whatWasWrittenDownIsCorrectedAndWhatStoodThereStays() {
        assertThat(jobs("correct", "speedometer, May", "--who", "the evening class", "--vehicle", "Fieldhand 4, yard").out())
                .isEqualTo("vehicle: \"Fieldhand 4, yard\", was \"Fieldhand 4, bench\"\n"
                        + "who: \"the evening class\", was \"the instructor\"\n");
        assertThat(jobs("list", "yard").out()).contains("Fieldhand 4, yard");
        assertThat(jobs("show", "speedometer, May").out().replaceAll("\\s+", " ")).contains("who the evening class circuit")
                .contains("who corrected: \"the evening class\", was \"the instructor\"");
        Run.Outcome early = jobs("correct", "speedometer, May", "--remark", "done");
        assertThat(early.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(early.err()).contains("not closed yet");
        assertThat(jobs("correct", "speedometer, May").err()).contains("give --vehicle, --complaint, --who or --remark");
        try (Store store = store()) {
            Hunt hunt = Hunt.of(store.jobs().find("speedometer, May"));
            add(store, hunt, new Entry.Closed("god", Optional.empty()));
        }
        jobs("correct", "speedometer, May", "--remark", "good");
        try (Store store = store()) {
            assertThat(Hunt.of(store.jobs().find("speedometer, May")).closing().orElseThrow().words()).isEqualTo("good");
        }
    }
}
