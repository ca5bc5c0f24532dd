package understudy.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.refusal.Refusal;

class CommandLineTextTest {
    private static final Pattern PATTERN = PatternLibrary.open().find("crank-36-1-vr").value().orElseThrow();
    private static final Speed SPEED = PATTERN.speed();

    @Test
    void aDeclaredFaultIsSwitchedOnByItsName() {
        Fault fault = PatternReader.readFault("loose contact", PATTERN).value().orElseThrow();
        assertThat(fault.place().on()).isTrue();
        Pattern played = PATTERN.withFault(fault);
        assertThat(played.faults()).hasSameSizeAs(PATTERN.faults()).contains(fault);
        assertThat(played.faults()).filteredOn(f -> f.place().on()).containsExactly(fault);
    }

    @Test
    void aNewFaultIsAddedUnderANameOfItsOwn() {
        Fault fault = PatternReader.readFault("fault: weak tooth, tooth: 5, strength: 40 %", PATTERN).value().orElseThrow();
        assertThat(fault).isEqualTo(new Fault.WeakTooth(
                new Fault.Place("weak tooth 2", "crank", When.ALWAYS, true), List.of(5), 0.4));
        Pattern once = PATTERN.withFault(fault);
        assertThat(once.faults()).hasSize(PATTERN.faults().size() + 1).endsWith(fault);
        Fault again = PatternReader.readFault("fault: weak tooth, tooth: 6, strength: 40 %", once).value().orElseThrow();
        assertThat(again.place().name()).isEqualTo("weak tooth 3");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "weak toth | fault:1:1: the pattern declares no fault named \"weak toth\"; did you mean \"weak tooth\"?",
        "fault: weak tooth, tooth: 36, strength: 40 % | fault:1:27: the wheel of \"crank\" has no tooth 36; it has 1 to 35",
        "fault: nois, rms: 1 V | fault:1:8: \"nois\" is not known; did you mean \"noise\"?",
        "fault: noise, rms: 1 | fault:1:20: \"1\" is only a number; write a voltage like 2.5 V",
        "fault: noise | fault:1:1: the fault \"noise\" needs \"rms\"; add \"rms: 2.5 V\"",
        "fault: noise, rms: 1 V, name: run-out | fault:1:31: two faults are named \"run-out\"; give each a name of its own: \"name: second noise\"",
        "fault: [noise | fault:1:14: a list in [ ] goes on wrongly here; separate its items with commas and close it with ]"})
    void faultsAreRefusedAtTheirPlace(String text, String message) {
        assertThat(PatternReader.readFault(text, PATTERN).problems()).extracting(Refusal::toString).containsExactly(message);
    }

    @Test
    void aPatternWithoutFaultsSaysHowToDescribeOne() {
        assertThat(PatternReader.readFault("weak tooth", PATTERN.withFaults(List.of())).problems())
                .extracting(Refusal::right).containsExactly("describe one: \"fault: dropout, length: 30 ms\"");
    }

    @Test
    void stepsAreSeparatedBySemicolons() {
        assertThat(PatternReader.readProfile(
                "ramp: 6000 rpm, from: 600 rpm, for: 5 s; hold: 6000 rpm, for: 2 s; follow", SPEED).value())
                .contains(new Profile(List.of(new Profile.Ramp(10, 100, 5), new Profile.Hold(100, 2), new Profile.Follow())));
        assertThat(PatternReader.readProfile("repeat: 2, steps: [{hold: 600 rpm, for: 1 s}]", SPEED).value())
                .contains(new Profile(List.of(new Profile.Repeat(2, List.of(new Profile.Hold(10, 1))))));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "hold: 9000 rpm, for: 2 s | profile:1:7: the speed 9000 rpm is out of this pattern's range; allowed are 20 rpm to 8000 rpm",
        "hold: 800 rpm, for: 2 s; folow | profile:1:26: \"folow\" is not known; did you mean \"follow\"?",
        "follow; hold: 800 rpm, for: 2 s | profile:1:1: \"follow\" is not the last step, so the steps after it never come; put it last, or remove it",
        "hold: 800 rpm, for: 2 s;; follow | profile:1:25: there is no step here; write a step like \"hold: 800 rpm, for: 2 s\", and one semicolon between two steps",
        "hold: 800 rpm; ramp: 900 rpm, for: 1 s | profile:1:1: a step needs \"for\"; add \"for: 2 s\"",
        "hold: 800 rpm, for: 1 s; ramp: 900 rpm, fro: 1 s, for: 1 s | profile:1:41: \"fro\" is not a key of a step; did you mean \"for\"?",
        "none.yaml | none.yaml:1:1: there is no such file; look at how its name and folder are spelled"})
    void profilesAreRefusedAtTheirPlace(String text, String message) {
        assertThat(PatternReader.readProfile(text, SPEED).problems()).extracting(Refusal::toString).containsExactly(message);
    }

    @Test
    void aProfileMayStandInAFile(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("warm up");
        Files.writeString(file, "- {hold: 600 rpm, for: 1 s}\n- follow\n");
        assertThat(PatternReader.readProfile(file.toString(), SPEED).value())
                .contains(new Profile(List.of(new Profile.Hold(10, 1), new Profile.Follow())));
        Files.writeString(file, "- {hold: 600 rpm}\n");
        assertThat(PatternReader.readProfile(file.toString(), SPEED).problems()).extracting(Refusal::toString)
                .containsExactly(file + ":1:3: a step needs \"for\"; add \"for: 2 s\"");
    }
}
