package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.cli.terminal.ExitCode;
import understudy.rig.AudioOutput;
import understudy.rig.Spread;
import understudy.store.Calibration;
import understudy.store.Store;

/** Rigs made, shown, changed and removed from the command line, in a real file. */
class RigCommandTest {

    @TempDir
    private Path home;

    private Run.Outcome rig(String... words) {
        String[] all = new String[words.length + 1];
        all[0] = "rig";
        System.arraycopy(words, 0, all, 1, words.length);
        return Run.in(home).understudy(all);
    }

    private void calibrate(String name) {
        AudioOutput measured = new AudioOutput(new Spread(1.3, 0.01), new Spread(80, 0.05), Optional.empty(), true, 2.5);
        try (Store store = Store.open(Run.in(home).folders().data().resolve("understudy.db"))) {
            store.rigs().calibrate(name, new Calibration(Instant.parse("2026-03-01T12:30:00Z"), "meter", Optional.of(measured),
                    Map.of(), Map.of(), ""));
        }
    }

    @Test
    void whatIsNotGivenIsTakenAsUsualAndSaidToBe() {
        Run.Outcome made = rig("make", "bench", "--notes", "second shelf");
        assertThat(made.err()).isEmpty();
        assertThat(made.exitCode()).isZero();
        assertThat(made.out()).isEqualTo("""
                made; it is kept
                rig      bench
                device   any
                output   full scale 1.41 V 20 % peak, assumed: not calibrated
                         100 ohm 50 %, through 10 uF 20 %, 2.5 V step at power-up
                divider  not built yet
                lead     100 mohm each wire
                limits   1 mA in normal use, 5 mA in any single fault
                notes    second shelf
                made     2026-03-01 12:00 UTC
                """);
        assertThat(rig("show", "BENCH").out()).isEqualTo(
                made.out().replace("made; it is kept\n", "") + "never calibrated\n");
        assertThat(rig("list").out()).isEqualTo("bench  full scale 1.41 V 20 % peak, assumed: not calibrated  not built yet\n");
    }

    @Test
    void everythingCanBeGivenAndComesBackAsJson() throws IOException {
        rig("make", "bench", "--full-scale", "1.38 V 2%", "--output-ohms", "47R", "--output-capacitor", "none", "--inverted",
                "--pop", "0 V", "--series", "18k 5%", "--shunt", "4k7", "--coupling",
                "transformer, ratio: 1:1.5 3%, inductance: 2 H 30%, primary: 90 ohm, secondary: 95 ohm, carries: 2 V, down-to: 50 Hz",
                "--lead-ohms", "1k 1%", "--limit-normal", "0.5 mA", "--override-limit", "5 mA to 6 mA", "--because", "page 7");
        Map<String, Object> all = JSON.std.mapFrom(rig("list", "--json").out());
        assertThat(all.get("rigs")).asString().isEqualTo("[{name=bench, device=null, "
                + "output={fullScaleVolts={nominal=1.38, tolerance=0.02}, outputOhms={nominal=47, tolerance=0.5}, "
                + "couplingFarads=null, inverted=true, popVolts=0}, calibrated=false, "
                + "divider={seriesOhms={nominal=18000, tolerance=0.05}, shuntOhms={nominal=4700, tolerance=0.01}, "
                // 2 V at 50 Hz: 2/(2 pi 50)
                + "coupling={ratio={nominal=1.5, tolerance=0.03}, henries={nominal=2, tolerance=0.3}, "
                + "primaryOhms={nominal=90, tolerance=0.1}, secondaryOhms={nominal=95, tolerance=0.1}, "
                + "mostVoltSeconds=0.00636619772368}}, "
                + "lead={ohms={nominal=1000, tolerance=0.01}, farads=2.0E-10}, "
                + "limits={normalAmps=5.0E-4, faultAmps=0.006, overrideReason=page 7}, notes=, "
                + "created=2026-03-01T12:00:00Z, changed=2026-03-01T12:00:00Z, calibrations=[]}]");
    }

    @Test
    void aTransformersRatioIsToldAsItSaysOnThePart() {
        assertThat(rig("make", "up", "--series", "10k", "--coupling", "transformer, ratio: 1 : 4.5").out())
                .contains("\ndivider  series 10 kohm 1 %, no shunt, transformer 1:4.5 of 2 H 30 %\n");
        assertThat(rig("make", "down", "--series", "10k", "--coupling", "transformer, ratio: 3:1 2%").out())
                .contains(", transformer 3:1 of 2 H 30 %\n");
    }

    @Test
    void anEditChangesOnlyWhatIsGiven() {
        rig("make", "bench", "--series", "18k 1%", "--shunt", "4k7 1%", "--coupling", "10 uF");
        Run.Outcome edited = rig("edit", "bench", "--shunt", "none", "--rename", "table");
        assertThat(edited.exitCode()).isZero();
        assertThat(edited.out()).startsWith("changed; it is kept\n").contains("\nrig      table\n")
                .contains("\ndivider  series 18 kohm 1 %, no shunt, capacitor 10 uF 20 %\n");
        assertThat(rig("show", "bench").err()).isEqualTo("there is no rig called \"bench\"; there are: table\n");
    }

    @Test
    void numbersGivenByHandEndACalibrationAndOtherEditsDoNot() {
        rig("make", "bench");
        calibrate("bench");
        assertThat(rig("show", "bench").out()).contains("\noutput   full scale 1.3 V 1 % peak, calibrated; turns the signal upside down\n")
                .contains("\ncalibrations, the latest first:\n  2026-03-01 12:30 UTC  meter  full scale 1.3 V 1 %, 80 ohm 5 %\n");
        assertThat(rig("edit", "bench", "--notes", "shelf").out()).contains("calibrated;").doesNotContain("no longer counts");
        assertThat(rig("edit", "bench", "--pop", "1 V").out())
                .contains("its calibration no longer counts, since its output was changed; it stays in the history\n")
                .contains("peak, as given: not calibrated; turns the signal\n         upside down\n");
        assertThat(rig("show", "bench").out()).contains("  2026-03-01 12:30 UTC  meter");
    }

    @Test
    void removingTakesTheNameSpelledOut() {
        rig("make", "bench");
        Run.Outcome nobody = rig("remove", "bench");
        assertThat(nobody.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(nobody.err())
                .isEqualTo("rig remove: nobody is there to be asked; write --yes bench to remove it for good\n");
        Run.Outcome other = rig("remove", "bench", "--yes", "yes");
        assertThat(other.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(other.err()).isEqualTo("--yes: \"yes\" is not this rig's name; write --yes bench to remove it for good\n");
        Run.Outcome yes = Run.in(home).atTerminal("yes\n").understudy("rig", "remove", "bench");
        assertThat(yes.exitCode()).isEqualTo(ExitCode.FAILED);
        assertThat(yes.out()).isEqualTo("This removes bench and its calibrations (0) for good. Type its name to go on: ");
        assertThat(yes.err()).isEqualTo("nothing was removed\n");
        assertThat(rig("list").out()).startsWith("bench ");
        assertThat(Run.in(home).atTerminal("Bench\n").understudy("rig", "remove", "bench").out()).endsWith("bench is removed\n");
        rig("make", "bench");
        assertThat(rig("remove", "bench", "--yes", "bench").out()).isEqualTo("bench is removed\n");
        assertThat(rig("list").out()).isEqualTo("There is no rig yet; make one with 'understudy rig make NAME'.\n");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            make;my bench|NAME: "my bench" is no name for a rig; give 1 to 40 letters, digits, - and _, like bench-1
            make;bench|there is a rig called bench already; give another name, or change that one: 'understudy rig edit bench'
            make;b;--device;no such thing|*--device: *
            make;b;--full-scale;1.4 kg|--full-scale: the unit "kg" is not known; write a voltage like 2.5 V
            make;b;--full-scale;100 V|--full-scale: 100 V is out of range; allowed are 50 mV to 60 V
            make;b;--series;-5 ohm|--series: -5 ohm is out of range; allowed are 1 ohm to 10 Mohm
            make;b;--series;18k 200%|--series: 200 % is out of range; allowed are 0 % to 90 %
            make;b;--shunt;4k7|--series: it is missing; give the series resistor too: without one nothing limits the current
            make;b;--coupling;10 ohm;--series;1k|--coupling: "10 ohm" is a resistance; write a capacitance like 47 nF
            make;b;--series;1k;--coupling;transformer, turn: 3|--coupling: transformer has no "turn"; it can have ratio, inductance, primary, secondary, carries, down-to
            make;b;--series;1k;--coupling;transformer, ratio: 2|--coupling: the ratio "2" will not do; give turns at the jack to turns at the clips, like 1:2 or 5:1, with a tolerance like 1:2 3%; allowed are 100:1 to 1:100
            make;b;--series;1k;--coupling;transformer, ratio: 1:0|--coupling: the ratio "1:0" will not do; give turns at the jack to turns at the clips, like 1:2 or 5:1, with a tolerance like 1:2 3%; allowed are 100:1 to 1:100
            make;b;--series;1k;--coupling;transformer, ratio: 1:2 99%|--coupling: the tolerance is given as 0.99; allowed are 0.0 to 0.9
            make;b;--series;1k;--coupling;transformer, inductance|--coupling: "inductance" has no colon in it; write it like "pull-up: 2.2 kohm"
            make;b;--inverted;maybe|--inverted: "maybe" will not do; give yes or no
            make;b;--limit-fault;8 mA|--limit-fault: 8 mA is more than the standard 5 mA; a higher one takes --override-limit and a reason
            make;b;--override-limit;5 mA to 8 mA|--override-limit: it needs a reason; add --because REASON: why this module stands more than the limit, and how you know
            make;b;--override-limit;8 mA;--because;x|--override-limit: "8 mA" does not say from what to what; write "1 mA to 2 mA" for normal use, or "5 mA to 12 mA" for a fault
            make;b;--override-limit;4 mA to 8 mA;--because;x|--override-limit: no limit stands at 4 mA; begin with the one that is raised: 1 mA for normal use, or 5 mA for a fault
            make;b;--override-limit;5 mA to 4 mA;--because;x|--override-limit: 4 mA is no higher than 5 mA; lower a limit with --limit-normal or --limit-fault
            make;b;--because;x|--because: there is nothing to give a reason for; add --override-limit, or leave it out
            edit;bench|rig edit: nothing to change was given; say what, like --notes "second shelf"
            edit;bench;--rename;a b|NAME: "a b" is no name for a rig; give 1 to 40 letters, digits, - and _, like bench-1
            edit;bunch;--notes;x|there is no rig called "bunch"; there are: bench
            show;bunch|there is no rig called "bunch"; there are: bench
            remove;bunch|there is no rig called "bunch"; there are: bench
            """)
    void whatCannotBeIsSaidAndChangesNothing(String typed, String said) {
        rig("make", "bench");
        String before = rig("list", "--json").out();
        Run.Outcome outcome = rig(typed.split(";"));
        if (said.startsWith("*")) {
            assertThat(outcome.err()).startsWith(said.replace("*", ""));
        } else {
            assertThat(outcome.err()).isEqualTo(said + "\n");
        }
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(rig("list", "--json").out()).isEqualTo(before);
    }

    @Test
    void aWrongCommandIsToldApart() {
        assertThat(rig("mak", "bench").err()).startsWith("rig: there is no command 'mak'; did you mean make?\n");
        assertThat(rig().exitCode()).isEqualTo(ExitCode.BAD_INPUT);
    }

    @Test
    void aStoreThatCannotBeOpenedIsASetUpToMend() throws IOException {
        Path folder = Run.in(home).folders().data();
        Files.createDirectories(folder.getParent());
        Files.writeString(folder, "a file where a folder should be");
        Run.Outcome list = rig("list");
        assertThat(list.exitCode()).isEqualTo(ExitCode.FAILED);
        assertThat(list.err()).startsWith(folder + ": this folder, for what you keep, can't be made (");
    }
}
