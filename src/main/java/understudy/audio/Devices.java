package understudy.audio;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;
import understudy.refusal.Refused;

/** The audio devices of this machine: finding one, and opening it in the best format it has. Any thread. */
public final class Devices {

    /** Tried in this order: most bits first; for equal bits the layout that needs least repacking. */
    static final List<SampleFormat> BEST_FIRST =
            List.of(SampleFormat.PCM32, SampleFormat.PCM24_IN_4, SampleFormat.PCM24, SampleFormat.PCM16);

    private static final List<Integer> RATES_BEST_FIRST = List.of(48000, 44100, 96000, 192000, 32000);
    private static final Duration BUFFER = Duration.ofMillis(200);

    private Devices() {}

    /** Devices that play; the default first. */
    public static List<Device> outputs() {
        return new ArrayList<>(mixers(Device.Direction.OUTPUT).keySet());
    }

    /** Devices that record; the default first. */
    public static List<Device> inputs() {
        return new ArrayList<>(mixers(Device.Direction.INPUT).keySet());
    }

    /**
     * The output that a user means: its name in full, or any part of name or description that only one has;
     * with " #2" after its name the second of that name.
     *
     * @throws Refused when none or several match; lists what there is
     */
    public static Device output(String wanted) {
        return match(wanted, outputs(), "output");
    }

    /** As {@link #output}, for an input. */
    public static Device input(String wanted) {
        return match(wanted, inputs(), "input");
    }

    static Device match(String wanted, List<Device> devices, String kind) {
        String part = wanted.strip().toLowerCase(Locale.ROOT);
        List<Device> found = devices.stream().filter(d -> d.numbered().equalsIgnoreCase(part)).collect(Collectors.toList());
        if (found.isEmpty()) {
            found = devices.stream().filter(d -> d.name().equalsIgnoreCase(part)).collect(Collectors.toList());
        }
        if (found.isEmpty()) {
            found = devices.stream().filter(d -> holds(d, part)).collect(Collectors.toList());
        }
        if (found.size() == 1) {
            return found.get(0);
        }
        if (devices.isEmpty()) {
            throw new Refused("no audio " + kind + " named \"" + wanted + "\": this machine has none", "plug one in, then try again");
        }
        boolean none = found.isEmpty();
        throw new Refused((none ? "no audio " + kind + " named \"" + wanted + "\"; there are: "
                        : "\"" + wanted + "\" fits " + found.size() + " audio " + kind + "s; name one of: ")
                        + (none ? devices : found).stream()
                                .map(d -> "\"" + (none ? d.label() : d.numbered()) + "\"").collect(Collectors.joining(", ")), "");
    }

    private static boolean holds(Device device, String part) {
        return !part.isEmpty() && Stream.of(device.name(), device.description())
                .anyMatch(text -> text.toLowerCase(Locale.ROOT).contains(part));
    }

    /**
     * The best format that the device opens with: at least so many channels, and as few as it has beyond that; 48 kHz
     * unless another rate is asked for; then the most bits, those that the system lists first.
     *
     * @throws Refused when it opens with none; says what was tried
     */
    public static DeviceChoice choose(Device device, int channels, OptionalInt rateHz) {
        List<Integer> rates = rateHz.isPresent() ? List.of(rateHz.getAsInt()) : RATES_BEST_FIRST;
        List<Integer> widths = channels == 1 ? List.of(2, 1) : Stream.of(channels, 2, 4, 6, 8, 10, 12, 16)
                .filter(w -> w >= channels).distinct().collect(Collectors.toList());
        Exception last = null;
        for (int rate : rates) {
            for (int width : widths) {
                for (DeviceChoice choice : formats(device, rate, width)) {
                    try {
                        open(choice, rate / 5).close();
                        return choice;
                    } catch (LineUnavailableException | IllegalArgumentException e) {
                        last = e;
                    }
                }
            }
        }
        throw Refused.setup("audio output \"" + device.label() + "\" does not open with " + channels
                + (channels == 1 ? " channel" : " channels") + " at "
                + (rateHz.isPresent() ? rateHz.getAsInt() + " Hz" : "any usual rate")
                + reasonAfterColon(last), "close other programs that use it, or ask for other channels or another rate", last);
    }

    /** Ways to lay out a sample: listed ones first, each group with most bits first. */
    private static List<DeviceChoice> formats(Device device, int rateHz, int channels) {
        Optional<Mixer> mixer = mixer(device);
        List<DeviceChoice> choices = new ArrayList<>();
        for (SampleFormat format : BEST_FIRST) {
            boolean listed = mixer.isPresent() && isListed(mixer.get(), format, channels);
            choices.add(new DeviceChoice(device, rateHz, channels, format, false, listed));
        }
        choices.sort(Comparator.comparing(c -> !c.listed()));
        return choices;
    }

    private static boolean isListed(Mixer mixer, SampleFormat format, int channels) {
        return Stream.of(mixer.getSourceLineInfo())
                .filter(DataLine.Info.class::isInstance)
                .flatMap(info -> Stream.of(((DataLine.Info) info).getFormats()))
                .anyMatch(f -> f.getSampleSizeInBits() == format.bits()
                        && (f.getChannels() == channels || f.getChannels() == AudioSystem.NOT_SPECIFIED)
                        && (f.getFrameSize() == channels * format.bytes() || f.getFrameSize() == AudioSystem.NOT_SPECIFIED));
    }

    /** How much a line should hold for a target fill: room for the target to grow in. */
    static Duration bufferFor(Duration targetFill) {
        Duration doubled = targetFill.multipliedBy(2);
        return doubled.compareTo(BUFFER) > 0 ? doubled : BUFFER;
    }

    static SourceDataLine open(DeviceChoice choice, int bufferFrames) throws LineUnavailableException {
        AudioFormat format = choice.audioFormat();
        Mixer mixer = mixer(choice.device()).orElseThrow(() -> new LineUnavailableException("it is gone"));
        var line = (SourceDataLine) mixer.getLine(new DataLine.Info(SourceDataLine.class, format));
        line.open(format, bufferFrames * format.getFrameSize());
        return line;
    }

    static TargetDataLine open(Device device, AudioFormat format, int bufferFrames) throws LineUnavailableException {
        Mixer mixer = mixer(device).orElseThrow(() -> new LineUnavailableException("it is gone"));
        var line = (TargetDataLine) mixer.getLine(new DataLine.Info(TargetDataLine.class, format));
        line.open(format, bufferFrames * format.getFrameSize());
        return line;
    }

    static String reasonAfterColon(Exception e) {
        return e == null || e.getMessage() == null ? "" : ": " + e.getMessage();
    }

    private static Optional<Mixer> mixer(Device device) {
        return mixers(device.direction()).entrySet().stream()
                .filter(entry -> entry.getKey().isSame(device))
                .map(entry -> AudioSystem.getMixer(entry.getValue()))
                .findFirst();
    }

    private static Map<Device, Mixer.Info> mixers(Device.Direction direction) {
        Map<Device, Mixer.Info> found = new LinkedHashMap<>();
        Map<List<String>, Integer> alike = new LinkedHashMap<>();
        for (Mixer.Info info : AudioSystem.getMixerInfo()) {
            if (hasDataLine(AudioSystem.getMixer(info), direction)) {
                int ordinal = alike.merge(List.of(info.getName(), info.getDescription(), info.getVendor()), 1, Integer::sum);
                found.put(new Device(info.getName(), info.getDescription(), info.getVendor(), direction, ordinal,
                        found.isEmpty()), info);
            }
        }
        return found;
    }

    /** Mixers of mere volume controls ("Port ...") have none. */
    private static boolean hasDataLine(Mixer mixer, Device.Direction direction) {
        boolean output = direction == Device.Direction.OUTPUT;
        Class<?> wanted = output ? SourceDataLine.class : TargetDataLine.class;
        Line.Info[] lines = output ? mixer.getSourceLineInfo() : mixer.getTargetLineInfo();
        return Stream.of(lines).anyMatch(info -> wanted.isAssignableFrom(info.getLineClass()));
    }
}
