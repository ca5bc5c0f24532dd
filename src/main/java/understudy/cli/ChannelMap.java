package understudy.cli;

import java.util.List;
import java.util.stream.IntStream;
import understudy.pattern.Output;
import understudy.pattern.Pattern;

/** Which output goes to which channel, as {@code --channels} says it. */
final class ChannelMap {

    private static final String OPTION = "--channels";
    private static final int MOST_CHANNELS = 32;

    private ChannelMap() {}

    /** For each channel the index of its output, or {@link Channels#SILENT}; without the option all outputs in order. */
    static int[] read(String written, Pattern pattern, Arguments given) {
        List<String> names = pattern.outputs().stream().map(Output::name).toList();
        if (written == null) {
            return IntStream.range(0, names.size()).toArray();
        }
        if (written.strip().matches("[0-9]+")) {
            return counted(written.strip(), names, given);
        }
        List<String> wanted = List.of(written.split(",", -1)).stream().map(String::strip).toList();
        if (wanted.size() > MOST_CHANNELS) {
            given.problem(OPTION, wanted.size() + " channels are too many", "at most " + MOST_CHANNELS + " can be written");
            return new int[] {0};
        }
        for (String name : wanted) {
            if (!name.equals("-") && !names.contains(name)) {
                given.problem(OPTION, pattern.id() + " has no output named \"" + name + "\"",
                        "its outputs are " + String.join(", ", names) + "; a silent channel is -");
            }
        }
        if (wanted.stream().allMatch("-"::equals)) {
            given.problem(OPTION, "every channel is silent", "name at least one of " + String.join(", ", names));
        }
        return wanted.stream().mapToInt(name -> name.equals("-") ? Channels.SILENT : names.indexOf(name)).toArray();
    }

    private static int[] counted(String written, List<String> names, Arguments given) {
        int count = given.whole(OPTION, written, 1, MOST_CHANNELS, names.size());
        if (count < names.size()) {
            given.problem(OPTION, names.size() + " outputs do not fit into " + count + (count == 1 ? " channel" : " channels"),
                    "name those that you want, for instance " + OPTION + " " + String.join(",", names.subList(0, count)));
        }
        return IntStream.range(0, count).map(channel -> channel < names.size() ? channel : Channels.SILENT).toArray();
    }
}
