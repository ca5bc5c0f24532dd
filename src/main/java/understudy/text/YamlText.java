package understudy.text;

import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.schema.CoreSchema;

/** From text to the tree of nodes with their places, and from the parser's jargon to plain words. */
public final class YamlText {
    private static final int MOST_LEVELS = 20;
    /** Repeats cost nothing here: each is the same node again, and lists and steps have limits of their own. */
    private static final int MOST_ALIASES = 1000;
    private static final LoadSettings SETTINGS = LoadSettings.builder().setSchema(new CoreSchema()).setUseMarks(true)
            .setMaxAliasesForCollections(MOST_ALIASES).build();

    private YamlText() {}

    /** The one document in the text, or a problem. */
    public static Optional<Node> tree(String written, Problems problems) {
        String text = written.startsWith("\ufeff") ? written.substring(1) : written;
        if (text.length() > TextFile.MOST_CHARACTERS) {
            TextFile.tooBig(problems);
            return Optional.empty();
        }
        try {
            if (tooDeepOrTagged(text, problems)) {
                return Optional.empty();
            }
            Optional<Node> root = new Compose(SETTINGS).composeString(text);
            if (root.isEmpty()) {
                problems.at(1, 1, "the file is empty", "begin with a title: \"title: what this is\"");
            }
            return root;
        } catch (MarkedYamlEngineException e) {
            String[] words = inPlainWords(e);
            boolean unending = String.valueOf(e.getProblem()).contains("unexpected end of stream");
            problems.add(unending ? e.getContextMark() : e.getProblemMark(), words[0], words[1]);
        } catch (ReaderException e) {
            TextFile.place(text, text.offsetByCodePoints(0, Math.min(e.getPosition(), text.codePointCount(0, text.length()))),
                    problems, String.format("the character U+%04X can't stand in such a file", e.getCodePoint()),
                    "delete it, or type it again");
        } catch (YamlEngineException e) { // has no place; what is left is the limit of aliases
            problems.at(1, 1, "this can't be read as YAML: " + e.getMessage(),
                    "compare it with a shipped file; at most " + MOST_ALIASES + " repeats with * can be read");
        }
        return Optional.empty();
    }

    /**
     * Whether there is depth or there are tags in the text. Looked for in the flat stream of events, since the tree's
     * builder would run out of stack on its way down.
     */
    private static boolean tooDeepOrTagged(String text, Problems problems) {
        int before = problems.count();
        int level = 0;
        for (Event event : new Parse(SETTINGS).parseString(text)) {
            Optional<String> tag = Optional.empty();
            if (event instanceof CollectionStartEvent start) {
                level++;
                tag = start.getTag();
            } else if (event instanceof CollectionEndEvent) {
                level--;
            } else if (event instanceof ScalarEvent scalar) {
                tag = scalar.getTag();
            }
            if (tag.isPresent()) {
                problems.add(event.getStartMark(), "a word that begins with \"!\" has no meaning here", "remove it");
            }
            if (level > MOST_LEVELS) {
                problems.add(event.getStartMark(), "lists and keys are nested too deeply",
                        "at most " + MOST_LEVELS + " levels can be read");
                return true;
            }
        }
        return problems.count() > before;
    }

    private static String[] inPlainWords(MarkedYamlEngineException e) {
        String problem = String.valueOf(e.getProblem());
        String context = String.valueOf(e.getContext());
        if (problem.contains("(TAB)")) {
            return words("there is a tab here", "indent and separate with spaces");
        }
        if (problem.contains("cannot start any token")) {
            return words("a value can't begin with this character", "put the value in quotes");
        }
        if (problem.contains("mapping values are not allowed")) {
            return words("a colon is not expected here",
                    "put text that has a colon in it in quotes, and line up the keys that belong together");
        }
        if (problem.contains("could not find expected ':'")) {
            return words("a key before this line has no colon", "write \"key: value\" on each line");
        }
        if (problem.contains("unexpected end of stream")) {
            return words("the quotes that open here are not closed", "close them");
        }
        if (problem.contains("escape character")) {
            return words("a backslash means something else within double quotes", "write two of them, or use single quotes");
        }
        if (problem.contains("another document")) {
            return words("a second document starts here", "keep to one, without \"---\" in between");
        }
        if (problem.contains("undefined alias")) {
            return words(problem.replace("found undefined alias ", "nothing is named &"),
                    "name a value with &name before *name repeats it");
        }
        if (context.contains("flow sequence")) {
            return words("a list in [ ] goes on wrongly here", "separate its items with commas and close it with ]");
        }
        if (context.contains("flow mapping")) {
            return words("keys in { } go on wrongly here", "separate them with commas and close them with }");
        }
        if (context.contains("block mapping") || context.contains("block collection")) {
            return words("this line is not lined up with the lines it belongs to",
                    "indent keys of one group, and dashes of one list, by the same number of spaces");
        }
        return words("this can't be read as YAML: " + problem, "compare it with a shipped file");
    }

    private static String[] words(String wrong, String right) {
        return new String[] {wrong, right};
    }
}
