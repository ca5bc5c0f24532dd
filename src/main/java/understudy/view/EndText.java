package understudy.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import understudy.audio.DeviceChoice;
import understudy.audio.PlayerEnd;
import understudy.audio.PlayerReport;
import understudy.audio.SoundFile;
import understudy.audio.Underrun;

/** What came of playing, for the record. */
public final class EndText {

    private EndText() {}

    public static List<String> lines(PlayerReport report) {
        List<String> lines = new ArrayList<>();
        String how = report.end() instanceof PlayerEnd.Finished ? "finished"
                : report.end() instanceof PlayerEnd.Stopped ? "stopped" : "ended";
        lines.add(format("%s after %.1f s, %d frames at %d Hz, %s", how, report.secondsPlayed(), report.framesPlayed(),
                report.destination().rateHz(), destination(report)));
        if (report.destination() instanceof DeviceChoice) {
            lines.add(report.hardware().isEmpty()
                    ? "what the hardware itself ran at, the system does not say"
                    : "the hardware itself ran at " + report.hardware());
        }
        lines.add(underruns(report));
        lines.add(format("latency %.0f ms%s, buffer %.0f ms", report.targetEndMillis(),
                report.targetEndMillis() == report.targetStartMillis() ? ""
                        : format(" (raised from %.0f ms by the underruns)", report.targetStartMillis()),
                report.capacityMillis()));
        lines.add(format("largest sample %.0f %% of full scale, %s", report.peakOfFullScale() * 100,
                report.clippedSamples() == 0 ? "none cut off" : report.clippedSamples() + " cut off"));
        if (report.stalls() > 0) {
            lines.add("the device took nothing for a second or longer, " + report.stalls() + " times");
        }
        if (report.leftOpen()) {
            lines.add("the device did not close and was left to itself");
        }
        lines.add(report.system());
        return lines;
    }

    private static String destination(PlayerReport report) {
        return report.destination() instanceof DeviceChoice choice
                ? choice.format().bits() + " bits, to \"" + choice.device().label() + "\""
                : report.destination() instanceof SoundFile file ? "24 bits, into " + file.path() : "in silence";
    }

    private static String underruns(PlayerReport report) {
        if (report.underrunCount() == 0) {
            return "no underruns";
        }
        Map<String, Long> causes = report.underruns().stream()
                .collect(Collectors.groupingBy(underrun -> words(underrun.cause()), TreeMap::new, Collectors.counting()));
        return format("underruns: %d, the longest %.0f ms; %s", report.underrunCount(), report.longestGapMillis(),
                causes.entrySet().stream().map(cause -> cause.getKey() + ": " + cause.getValue())
                        .collect(Collectors.joining(", ")));
    }

    private static String words(Underrun.Cause cause) {
        return switch (cause) {
            case WRITER_LATE -> "the machine was busy";
            case QUEUE_TOO_SHORT -> "the sound system took more at once than was sent ahead";
            case COLLECTOR -> "the Java memory collector held the program up";
            case SINK_STALLED -> "the sound system took nothing";
        };
    }

    private static String format(String text, Object... values) {
        return String.format(Locale.ROOT, text, values);
    }
}
