package understudy.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import understudy.trace.Answer;
import understudy.trace.Entry;
import understudy.trace.Place;
import understudy.trace.Suspect;

/** What a report says, against jobs whose outcome is known from how they were made. */
class ReportTest {

    /** The tunnel connector, index 2: bad at points 1 and 2, good at 3, repaired, good at 1. Events 1 to 20. */
    private static Sample repaired() {
        return Sample.speedometer().cautioned().reference(Answer.value(50)) // 1 to 3
                .moved(0, 2).bad(1).good(2) // 5, 7, 9
                .withdraw(9, "clip had slipped") // 10
                .good(2).good(2) // 12, 14
                .repaired("Two terminals replaced") // 15
                .good(0).closed(); // 17, 18
    }

    @Test
    void aFinishedJobIsToldFromComplaintToProof() {
        Document page = Pages.of(repaired());
        assertThat(Pages.warnings(page)).isEmpty();
        assertThat(Pages.section(page, "The job")).contains("Fieldhand 4", "Speedometer drops to zero on rough ground",
                "A. Student", "2026-03-01 13:00 UTC+01:00", "2026-03-01 13:18 UTC+01:00", "Europe/Berlin");
        assertThat(Pages.section(page, "Result")).contains("\"tunnel connector and tunnel harness\", between tunnel connector and"
                + " bulkhead connector", "the repair is proven", "(step 17)", "own sensor the display works again");
        assertThat(Pages.section(page, "Why the result is what it is"))
                .contains("Injected at tunnel connector (step 7)", "Injected at bulkhead connector (steps 12 and 14)",
                        "was moved (step 5)");
        assertThat(Pages.section(page, "The repair, and its proof")).contains("Two terminals replaced", "step 15", "(step 17)");
        assertThat(Pages.section(page, "What the signal came from")).contains("bench box", "calibrated 2026-02-27 by meter");
        assertThat(Pages.section(page, "How it was done, and why that proves something"))
                .contains("first proven on a circuit that works", "(step 3)");
        assertThat(Pages.section(page, "Cautions")).contains("Read and ticked before the work began (2026-03-01 13:01)");
    }

    @Test
    void theProbabilityIsTheHuntsRoundedDown() {
        Sample sample = Sample.speedometer().cautioned().reference(Answer.value(50)).moved(0, 2).good(2);
        double percent = 100 * sample.hunt().odds().probability(2);
        assertThat(percent).as("neither nothing nor all, or this test could not fail").isBetween(10.0, 99.8);
        String result = Pages.section(Pages.of(sample), "Result");
        double told = Double.parseDouble(result.replaceAll("(?s).*with a probability of ([0-9.]+) %.*", "$1"));
        // a whole per cent is the coarsest that is told
        assertThat(told).isLessThanOrEqualTo(percent).isGreaterThan(percent - 1);
    }

    @Test
    void nothingIsEverCertain() {
        Sample sample = Sample.speedometer().cautioned().reference(Answer.value(50));
        for (int i = 0; i < 20; i++) {
            sample.bad(1).good(2);
        }
        Document page = Pages.of(sample);
        assertThat(Pages.text(page)).doesNotContain("100 %", "100.0 %", "probability of 0");
        assertThat(Pages.section(page, "Result")).contains("more than 99.9 %");
        assertThat(Pages.section(page, "What was not proven")).contains("less than 0.1 %");
    }

    @Test
    void injectionsAreListedWithWhatWasWithdrawnStruckThrough() {
        Element table = Pages.element(Pages.of(repaired()), "All injections");
        // the seven of the job, less the withdrawn one: step 3 on the reference, 12, 14, 17 good; 5, 7 bad
        assertThat(Pages.ofClass(table, "tr", "good")).hasSize(4);
        assertThat(Pages.ofClass(table, "tr", "bad")).hasSize(2);
        List<Element> withdrawn = Pages.ofClass(table, "tr", "withdrawn");
        assertThat(withdrawn).hasSize(1);
        assertThat(Pages.elements(withdrawn.get(0), "s").stream().map(Element::getTextContent))
                .contains("9", "bulkhead connector", "50 km/h", "good");
        assertThat(withdrawn.get(0).getTextContent()).contains("Withdrawn: \"clip had slipped\"");
        assertThat(Pages.ofClass(table, "tr", "stage").stream().map(Element::getTextContent)).containsExactly(
                "On the reference circuit, which works", "On the suspect circuit", "On the suspect circuit, after the repair");
        assertThat(table.getTextContent()).contains("50 km/h, good from 49 to 51", "1398 rpm = 396.7 Hz", "full level", "20 mV",
                "98 % of the volts", "comes and goes when moved: connector \"tunnel connector and tunnel harness\"");
    }

    @Test
    void anUnfinishedJobSaysSoOnTop() {
        Document page = Pages.of(Sample.speedometer().cautioned().reference(Answer.value(50)).bad(0));
        assertThat(Pages.warnings(page)).singleElement().asString().startsWith("Unfinished");
        assertThat(Pages.section(page, "Result")).startsWith("No part stands convicted.");
        assertThat(Pages.section(page, "The circuit")).doesNotContain("CONVICTED");
        assertThat(Pages.section(page, "The job")).contains("Closednot yet");
        assertThat(Pages.section(page, "What was not proven")).contains("That the repair holds was not proven.");
    }

    @Test
    void aJobThatHasNotBegunClaimsNothing() {
        Document page = Pages.of(Sample.speedometer());
        assertThat(Pages.section(page, "Result")).isEqualTo("Nothing is found yet: no injection on the suspect circuit counts.");
        assertThat(Pages.section(page, "Cautions")).contains("The cautions were not ticked.");
        assertThat(Pages.section(page, "All injections")).isEqualTo("Nothing was injected.");
    }

    @Test
    void aMethodThatWasNotProvenIsNamed() {
        Document without = Pages.of(Sample.wires(List.of("a", "b")).cautioned().good(0));
        assertThat(Pages.warnings(without)).anyMatch(warning -> warning.startsWith("The method was not proven"));
        assertThat(Pages.text(without)).contains("There was no reference circuit");
        Document wentOn = Pages.of(Sample.speedometer().cautioned().reference(Answer.of(Answer.Kind.NOTHING))
                .then(new Entry.WentOn("the wheel's circuit is open too")).bad(0));
        assertThat(Pages.text(wentOn)).contains("There it also read bad (step 3)", "\"the wheel's circuit is open too\"")
                .doesNotContain("first proven");
    }

    @Test
    void aRehearsalSaysSoOnTop() {
        Sample sample = Sample.speedometer().cautioned();
        assertThat(Pages.warnings(Pages.of(sample))).noneMatch(warning -> warning.startsWith("A rehearsal"));
        sample.then(new Entry.Noted("from here on: rehearsing silently, in real time; nothing leaves the machine"));
        assertThat(Pages.warnings(Pages.of(sample))).anyMatch(warning -> warning.startsWith("A rehearsal"));
    }

    @Test
    void readingsThatContradictEachOtherAreNamedByTheirSteps() {
        Document page = Pages.of(Sample.speedometer().cautioned().reference(Answer.value(50)).good(0).bad(1).bad(3));
        assertThat(Pages.warnings(page)).anySatisfy(warning -> assertThat(warning)
                .contains("contradict each other: step 5 (good) and steps 7 and 9 (bad)."));
    }

    @Test
    void aModuleIsNotConvictedBeforeAllIsProven() {
        Sample suspected = Sample.speedometer().cautioned().reference(Answer.value(50)).bad(4).bad(4).bad(4).bad(4);
        assertThat(suspected.hunt().finding().is(Suspect.Side.MODULE)).isTrue();
        Document before = Pages.of(suspected);
        assertThat(Pages.section(before, "Result")).contains("The module does not stand convicted");
        assertThat(Pages.section(before, "The circuit")).doesNotContain("CONVICTED");
        String heading = "What was proven before the module may be called bad";
        assertThat(Pages.ofClass(Pages.element(before, heading), "td", "bad")).hasSize(6);

        Document after = Pages.of(suspected.proveAll());
        assertThat(Pages.section(after, "Result")).contains("The fault is in the module");
        assertThat(Pages.section(after, "The circuit")).contains("CONVICTED");
        assertThat(Pages.ofClass(Pages.element(after, heading), "td", "good")).hasSize(6);
        assertThat(Pages.section(after, heading)).contains("seen with meter, grounds (step 17)");
    }

    @Test
    void aSoundCircuitPointsAtTheSensorsSide() {
        Document page = Pages.of(Sample.wires(List.of("first", "pin")).cautioned().good(0).good(0));
        assertThat(Pages.section(page, "Result")).startsWith("The circuit is sound from first to the module.");
    }

    @Test
    void aRepairThatDidNotHelpIsNotProven() {
        Document page = Pages.of(repairedButBad());
        assertThat(Pages.section(page, "Result")).contains("That the repair holds is not proven.");
        assertThat(Pages.section(page, "The repair, and its proof")).contains("no injection where the sensor's signal enters has"
                + " read good since");
    }

    private static Sample repairedButBad() {
        return Sample.speedometer().cautioned().reference(Answer.value(50)).bad(1).bad(1).good(2).good(2)
                .repaired("Cleaned").bad(0);
    }

    @Test
    void pinsThatWereLeftAloneAndNotesAreRemarks() {
        Document page = Pages.of(Sample.speedometer().cautioned().then(new Entry.PinMeasured(new Place(true, 0), 12.1))
                .then(new Entry.Noted("Floor panel wet")).withdraw(3, "wrong job"));
        assertThat(Pages.section(page, "Remarks")).contains("12.1 V measured on the pin at wheel connector",
                "Step 3, 2026-03-01 13:03: withdrawn, \"wrong job\"");
    }

    @Test
    void whatAPersonTypedStaysText() {
        String typed = "<script>alert('x')</script> \"q\" & f\u00e4llt \u901f\u5ea6 ]]> <!--";
        Sample sample = Sample.speedometer(typed, "<b>&amp;</b>").cautioned().reference(Answer.value(50))
                .then(new Entry.Noted(typed)).bad(1).good(2).bad(1).good(2).repaired(typed).good(0)
                .then(new Entry.Closed(typed, Optional.empty()));
        Document page = Pages.of(sample);
        assertThat(Pages.elements(page.getDocumentElement(), "script")).isEmpty();
        assertThat(Pages.elements(page.getDocumentElement(), "b")).isEmpty();
        assertThat(Pages.section(page, "The job")).contains(typed, "<b>&amp;</b>");
        assertThat(Pages.section(page, "Remarks")).contains(typed);
        assertThat(Pages.section(page, "The repair, and its proof")).contains(typed);
        assertThat(Pages.section(page, "Result")).contains(typed);
    }

    @Test
    void whatXmlCantHoldBecomesVisible() {
        Document page = Pages.of(Sample.speedometer("bell\u0007 half\ud83d turned\u202e", "A"));
        assertThat(Pages.section(page, "The job")).contains("bell\ufffd half\ufffd turned\ufffd");
    }

    @Test
    void nothingIsFetched() {
        String html = ReportFile.html(repaired().report(), Paper.LETTER);
        // the two names of languages that XML asks for are no addresses that anything is fetched from
        String plain = html.replace("xmlns=\"http://www.w3.org/1999/xhtml\"", "").replace("xmlns=\"http://www.w3.org/2000/svg\"", "");
        assertThat(plain).doesNotContain("http:", "https:", "src=", "href", "url(", "@import", "<script", "<link", "<object",
                "<iframe", "<image");
        assertThat(html).contains("default-src 'none'").contains("size: Letter");
    }
}
