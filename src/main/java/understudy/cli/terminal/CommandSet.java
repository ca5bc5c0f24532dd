package understudy.cli.terminal;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine;

/**
 * Commands by name, in the order of their overview. Reading the declarations of all takes longer than most run, so one that is
 * asked for is made alone.
 */
public final class CommandSet {

    /** Makes one command. */
    public interface Maker {

        /** @param words that follow the command's name */
        Object command(Surroundings surroundings, String... words);
    }

    /** Makes a command that has none below it. */
    public interface Single {

        Object command(Surroundings surroundings);
    }

    private final Map<String, Maker> makers = new LinkedHashMap<>();

    public CommandSet with(String name, Single command) {
        return withGroup(name, (surroundings, words) -> command.command(surroundings));
    }

    /** A command that has commands below it. */
    public CommandSet withGroup(String name, Maker group) {
        makers.put(name, group);
        return this;
    }

    /**
     * Puts the command that the first word names below {@code parent}; all of them where it names none.
     *
     * @param words that were typed behind the parent's name
     */
    public CommandLine below(Object parent, Surroundings surroundings, String... words) {
        CommandLine line = new CommandLine(parent);
        Maker asked = words.length == 0 ? null : makers.get(words[0]);
        if (asked != null) {
            line.addSubcommand(asked.command(surroundings, Arrays.copyOfRange(words, 1, words.length)));
        } else {
            makers.values().forEach(maker -> line.addSubcommand(maker.command(surroundings)));
        }
        return line;
    }
}
