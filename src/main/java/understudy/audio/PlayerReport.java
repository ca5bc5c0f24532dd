package understudy.audio;

import java.util.List;

/**
 * What came of a run, for the record.
 *
 * @param end               how it ended
 * @param destination       where it played, and in which format
 * @param secondsPlayed     signal that the device has taken
 * @param framesPlayed      the same in frames
 * @param underrunCount     gaps
 * @param underruns         the first {@value GapWatch#KEPT} of them
 * @param longestGapMillis  0 when there was none
 * @param stalls            times that the device took nothing for a second
 * @param targetStartMillis latency at the start
 * @param targetEndMillis   latency at the end
 * @param capacityMillis    what the device's buffer holds
 * @param clippedSamples    samples held at full scale
 * @param peakOfFullScale   largest fraction of full scale asked for
 * @param leftOpen          the device did not close within two seconds and was left to itself
 * @param system            operating system and Java
 */
public record PlayerReport(
        PlayerEnd end,
        Destination destination,
        double secondsPlayed,
        long framesPlayed,
        int underrunCount,
        List<Underrun> underruns,
        double longestGapMillis,
        int stalls,
        double targetStartMillis,
        double targetEndMillis,
        double capacityMillis,
        long clippedSamples,
        double peakOfFullScale,
        boolean leftOpen,
        String system) {

    public PlayerReport {
        underruns = List.copyOf(underruns);
    }
}
