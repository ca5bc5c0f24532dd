package understudy.pattern;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import understudy.refusal.Control;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Result;
import understudy.text.Nearest;
import understudy.text.Problems;
import understudy.text.TextFile;
import understudy.text.YamlText;

/** Reads the pieces of pattern that a command line holds, in the words of a pattern file. */
final class CommandLineText {
    private CommandLineText() {}

    static Result<Fault> fault(String given, Pattern pattern) {
        String text = oneLine(given);
        String name = text.strip();
        for (Fault declared : pattern.faults()) {
            if (declared.place().name().equals(name)) {
                return Result.of(declared.switchedOn());
            }
        }
        Problems problems = new Problems(Location.of(Control.FAULT), column -> Math.min(column - 1, end(text)));
        if (!text.contains(":")) {
            List<String> names = pattern.faults().stream().map(fault -> fault.place().name()).toList();
            problems.at(1, 2, "the pattern declares no fault named \"" + name + "\"",
                    names.isEmpty() ? "describe one: \"fault: dropout, length: 30 ms\"" : Nearest.advice(name, names));
            return Result.refused(problems.inOrder());
        }
        Map<String, Optional<Output>> outputs = new LinkedHashMap<>();
        pattern.outputs().forEach(output -> outputs.put(output.name(), Optional.of(output)));
        FaultReader reader = new FaultReader(problems, outputs);
        pattern.faults().forEach(fault -> reader.taken(fault.place().name()));
        if (pattern.faults().size() >= FormatLimits.MOST_FAULTS) {
            problems.at(1, 2, "the pattern has " + FormatLimits.MOST_FAULTS + " faults already", "no more fit; leave one out");
        }
        return Result.of(YamlText.tree("{" + text + "}", problems)
                .flatMap(node -> reader.read(node, true)), problems.inOrder());
    }

    static Result<Profile> profile(String textOrFile, Speed speed) {
        boolean file = !textOrFile.contains(";") && textOrFile.matches(".*\\.ya?ml") || isFile(textOrFile);
        return file ? profileFile(textOrFile, speed) : profileText(textOrFile, speed);
    }

    private static boolean isFile(String text) {
        try {
            return Files.isRegularFile(Path.of(text));
        } catch (InvalidPathException e) {
            return false;
        }
    }

    private static Result<Profile> profileFile(String file, Speed speed) {
        Problems problems = new Problems(file);
        return Result.of(TextFile.read(file, problems)
                .flatMap(text -> YamlText.tree(text, problems))
                .flatMap(node -> new ProfileReader(problems, Optional.of(speed)).read(node)), problems.inOrder());
    }

    /** Makes one list in brackets of the steps: each in braces, but for a single word like "follow". */
    private static Result<Profile> profileText(String given, Speed speed) {
        String text = oneLine(given);
        StringBuilder yaml = new StringBuilder("[");
        NavigableMap<Integer, Integer> starts = new TreeMap<>(); // of steps: column in the list -> column in the text
        int start = 1;
        for (String step : text.split(";", -1)) {
            if (step.isBlank()) {
                return Result.refused(List.of(new Refusal(new Location.Line(Location.of(Control.PROFILE), 1, start), "there is no step here",
                        "write a step like \"hold: 800 rpm, for: 2 s\", and one semicolon between two steps")));
            }
            boolean word = !step.contains(":");
            yaml.append(word ? ' ' : '{');
            starts.put(yaml.length() + 1, start);
            yaml.append(step).append(word ? ' ' : '}').append(',');
            start += step.length() + 1;
        }
        yaml.setCharAt(yaml.length() - 1, ']');
        Problems problems = new Problems(Location.of(Control.PROFILE), column -> {
            Map.Entry<Integer, Integer> step = starts.floorEntry(column);
            return step == null ? 1 : Math.min(column - step.getKey() + step.getValue(), end(text));
        });
        return Result.of(YamlText.tree(yaml.toString(), problems)
                .flatMap(node -> new ProfileReader(problems, Optional.of(speed)).read(node)), problems.inOrder());
    }

    /** A command line is one line, so that a column is enough to find the place. */
    private static String oneLine(String text) {
        return text.replaceAll("[\\n\\r\u0085\u2028\u2029]", " ");
    }

    /** The column after the last letter, where what is missing at the end is missed. */
    private static int end(String text) {
        return text.codePointCount(0, text.length()) + 1;
    }
}
