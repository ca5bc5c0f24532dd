package understudy.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import understudy.trace.Answer;

/** Web Content Accessibility Guidelines 2.2, success criteria 1.4.3 (text) and 1.4.11 (graphics). */
class ContrastTest {

    private static final double TEXT = 4.5;
    private static final double GRAPHICS = 3;
    private static final String WHITE = "ffffff";

    private static final String HTML = ReportFile.html(Sample.speedometer().cautioned().reference(Answer.value(50)).bad(1).good(2)
            .bad(2).bad(1).good(2).report(), Paper.A4);

    @Test
    void textStandsOutFromWhite() {
        List<String> colours = found("[^-]color: #([0-9a-f]{6})");
        assertThat(colours).isNotEmpty().allSatisfy(colour -> assertThat(contrast(colour, WHITE)).isGreaterThanOrEqualTo(TEXT));
    }

    @Test
    void blackTextStandsOutFromEveryGround() {
        List<String> grounds = found("background: #([0-9a-f]{6})");
        assertThat(grounds).isNotEmpty().allSatisfy(ground -> assertThat(contrast("111111", ground)).isGreaterThanOrEqualTo(TEXT));
    }

    @Test
    void marksStandOutFromWhiteAndTheirWhiteSignsFromThem() {
        List<String> fills = found("fill=\"#([0-9a-f]{6})\" stroke=\"#\\1\"");
        assertThat(fills).isNotEmpty().allSatisfy(fill -> assertThat(contrast(fill, WHITE)).isGreaterThanOrEqualTo(GRAPHICS));
    }

    private static List<String> found(String pattern) {
        return Pattern.compile(pattern).matcher(HTML).results().map((MatchResult match) -> match.group(1)).distinct().toList();
    }

    /** By the guidelines' definition of relative luminance. */
    private static double contrast(String one, String other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(String colour) {
        return 0.2126 * part(colour, 0) + 0.7152 * part(colour, 2) + 0.0722 * part(colour, 4);
    }

    private static double part(String colour, int from) {
        double part = Integer.parseInt(colour.substring(from, from + 2), 16) / 255.0;
        return part <= 0.04045 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4);
    }
}
