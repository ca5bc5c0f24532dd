package understudy.audio;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What a device of the Linux sound drivers really runs at while its line is open, whatever was asked for and
 * converted on the way. Unknown for a sound server's device, and on other systems.
 */
final class HardwareFormat {

    /** Where the drivers tell. */
    static final Path ASOUND = Path.of("/proc/asound");

    private static final Pattern CARD_AND_DEVICE = Pattern.compile("\\[(?:plug)?hw:(\\d+),(\\d+)]");

    private HardwareFormat() {}

    /** For instance "S16_LE, 2 channels, 48000 Hz", in the drivers' own names. */
    static Optional<String> of(Device device, Path asound) {
        Matcher place = CARD_AND_DEVICE.matcher(device.name());
        if (!place.find()) {
            return Optional.empty();
        }
        Path file = asound.resolve("card" + place.group(1) + "/pcm" + place.group(2) + "p/sub0/hw_params");
        try (var lines = Files.lines(file)) {
            Map<String, String> values = lines.map(line -> line.split(":\\s*", 2)).filter(pair -> pair.length == 2)
                    .collect(Collectors.toMap(pair -> pair[0], pair -> pair[1], (first, second) -> first));
            return values.containsKey("format") && values.containsKey("channels") && values.containsKey("rate")
                    ? Optional.of(values.get("format") + ", " + values.get("channels") + " channels, "
                            + values.get("rate").split(" ")[0] + " Hz")
                    : Optional.empty();
        } catch (IOException | UncheckedIOException e) {
            return Optional.empty();
        }
    }
}
