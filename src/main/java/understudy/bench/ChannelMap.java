package understudy.bench;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.quantity.WholeNumber;
import understudy.refusal.Control;
import understudy.refusal.Location;
import understudy.refusal.Refusals;
import understudy.refusal.Remedy;
import understudy.wave.VoltSource;

/**
 * Which output goes to which channel.
 *
 * @param outputs for each channel the index of the pattern's output that it carries, or {@link #SILENT}
 */
public record ChannelMap(List<Integer> outputs) {

    public static final int SILENT = -1;
    private static final int MOST_CHANNELS = 32;

    public ChannelMap {
        outputs = List.copyOf(outputs);
    }

    /** All outputs in their order. */
    public static ChannelMap all(Pattern pattern) {
        return new ChannelMap(IntStream.range(0, pattern.outputs().size()).boxed().toList());
    }

    /** These outputs, each on a channel of its own. */
    public static ChannelMap only(List<Output> played, Pattern pattern) {
        return new ChannelMap(played.stream().map(pattern.outputs()::indexOf).toList());
    }

    /** From names in channel order, "crank,cam" or "-,crank" with - for a silent channel, or from a number of channels. */
    public static ChannelMap read(String text, Pattern pattern, Refusals problems) {
        List<String> names = pattern.outputs().stream().map(Output::name).toList();
        if (text.strip().matches("[0-9]+")) {
            return counted(text.strip(), names, problems);
        }
        List<String> wanted = Arrays.stream(text.split(",", -1)).map(String::strip).toList();
        if (wanted.size() > MOST_CHANNELS) {
            problems.add(Control.CHANNELS, wanted.size() + " channels are too many", "at most " + MOST_CHANNELS + " can be written");
            return new ChannelMap(List.of(0));
        }
        for (String name : wanted) {
            if (!name.equals("-") && !names.contains(name)) {
                problems.add(Control.CHANNELS, pattern.id() + " has no output named \"" + name + "\"",
                        "its outputs are " + String.join(", ", names) + "; a silent channel is -");
            }
        }
        if (wanted.stream().allMatch("-"::equals)) {
            problems.add(Control.CHANNELS, "every channel is silent", "name at least one of " + String.join(", ", names));
        }
        return new ChannelMap(wanted.stream().map(name -> name.equals("-") ? SILENT : names.indexOf(name)).toList());
    }

    private static ChannelMap counted(String written, List<String> names, Refusals problems) {
        int count = problems.attempt(Location.of(Control.CHANNELS), () -> WholeNumber.read(written, 1, MOST_CHANNELS))
                .orElse(names.size());
        if (count < names.size()) {
            problems.add(Control.CHANNELS,
                    names.size() + " outputs do not fit into " + count + (count == 1 ? " channel" : " channels"),
                    Remedy.of("name those that you want, for instance ")
                            .set(Control.CHANNELS, String.join(",", names.subList(0, count))));
        }
        return new ChannelMap(IntStream.range(0, count).map(channel -> channel < names.size() ? channel : SILENT).boxed().toList());
    }

    public int channels() {
        return outputs.size();
    }

    /** Each output that is played, once. */
    public List<Output> played(Pattern pattern) {
        return outputs.stream().filter(output -> output != SILENT).distinct().map(pattern.outputs()::get).toList();
    }

    /** The source's channels, one for each output, on the channels of this map. */
    VoltSource route(VoltSource source) {
        boolean asTheyCome = outputs.equals(IntStream.range(0, source.channels()).boxed().toList());
        return asTheyCome ? source : new RoutedSource(source, this);
    }
}
