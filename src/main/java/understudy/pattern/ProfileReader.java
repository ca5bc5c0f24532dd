package understudy.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import understudy.text.Fields;
import understudy.text.Problems;
import understudy.text.Values;

/** Reads a profile: its steps, and whether they can follow one another. */
final class ProfileReader {
    private static final List<String> KINDS = List.of("hold", "ramp", "sweep", "crank", "repeat");
    private static final int MOST_LEVELS = 4;

    private final Problems problems;
    private final Values values;
    private final Optional<Speed> speed;
    private int steps;

    ProfileReader(Problems problems, Optional<Speed> speed) {
        this.problems = problems;
        this.values = new Values(problems);
        this.speed = speed;
    }

    Optional<Profile> read(Node node) {
        return steps(Fields.list(problems, node, 1, FormatLimits.MOST_STEPS));
    }

    /** The profile of steps that may come from several texts; the last of them may follow the hand or go on forever. */
    Optional<Profile> steps(List<Node> nodes) {
        int before = problems.count();
        double startHz = speed.map(Speed::defaultHz).orElse(Double.NaN);
        List<Profile.Step> read = list(nodes, startHz, 1);
        return problems.count() == before && !read.isEmpty() ? Optional.of(new Profile(read)) : Optional.empty();
    }

    private List<Profile.Step> list(List<Node> nodes, double startHz, int level) {
        List<Profile.Step> read = new ArrayList<>();
        double hz = startHz;
        for (int i = 0; i < nodes.size(); i++) {
            if (++steps > FormatLimits.MOST_STEPS) {
                if (steps == FormatLimits.MOST_STEPS + 1) {
                    problems.add(nodes.get(i), "the profile has too many steps",
                            "at most " + FormatLimits.MOST_STEPS + ", each step of each \"repeat\" counted once");
                }
                return read;
            }
            Optional<Profile.Step> step = step(nodes.get(i), i == nodes.size() - 1, hz, level);
            step.ifPresent(read::add);
            hz = step.map(s -> endHz(s)).orElse(Double.NaN);
        }
        return read;
    }

    /** The speed a step ends at; NaN where it can't be told. */
    private static double endHz(Profile.Step step) {
        if (step instanceof Profile.Hold hold) {
            return hold.hz();
        } else if (step instanceof Profile.Ramp ramp) {
            return ramp.toHz();
        } else if (step instanceof Profile.Sweep sweep) {
            return sweep.toHz();
        } else if (step instanceof Profile.Crank crank) {
            return crank.hz();
        } else if (step instanceof Profile.Repeat repeat && !repeat.steps().isEmpty()) {
            return endHz(repeat.steps().get(repeat.steps().size() - 1));
        }
        return Double.NaN;
    }

    private Optional<Profile.Step> step(Node node, boolean last, double hz, int level) {
        if (node instanceof ScalarNode) {
            return follow(node, last, level);
        }
        Fields fields = new Fields(problems, node, "a step", List.of(
                "hold", "ramp", "sweep", "crank", "repeat", "from", "for", "cylinders", "ripple", "steps"));
        String kind = fields.oneOf(KINDS.toArray(String[]::new)).orElse("");
        return switch (kind) {
            case "hold" -> hold(fields);
            case "ramp" -> ramp(fields);
            case "sweep" -> sweep(fields, hz);
            case "crank" -> crank(fields);
            case "repeat" -> repeat(fields, last, hz, level);
            default -> Optional.empty();
        };
    }

    private Optional<Profile.Step> follow(Node node, boolean last, int level) {
        boolean follow = values.choice(node, Map.of("follow", true)).isPresent();
        if (follow && level > 1) {
            problems.add(node, "\"follow\" stands within \"repeat\"", "let it be the last step of the profile, or leave it out");
        } else if (follow && !last) {
            problems.add(node, "\"follow\" is not the last step, so the steps after it never come",
                    "put it last, or remove it");
        }
        return follow ? Optional.of(new Profile.Follow()) : Optional.empty();
    }

    private double speed(Fields fields, String key) {
        return SpeedReader.hz(fields.place(key), speed, problems);
    }

    private double fromHz(Fields fields) {
        return fields.has("from") ? speed(fields, "from") : Double.NaN;
    }

    private double seconds(Fields fields) {
        return fields.quantity("for", FormatLimits.STEP);
    }

    private Optional<Profile.Step> hold(Fields fields) {
        fields.refuse("\"hold\"", "from", "cylinders", "ripple", "steps");
        Profile.Step step = new Profile.Hold(speed(fields, "hold"), seconds(fields));
        return fields.clean() ? Optional.of(step) : Optional.empty();
    }

    private Optional<Profile.Step> ramp(Fields fields) {
        fields.refuse("\"ramp\"", "cylinders", "ripple", "steps");
        Profile.Step step = new Profile.Ramp(fromHz(fields), speed(fields, "ramp"), seconds(fields));
        return fields.clean() ? Optional.of(step) : Optional.empty();
    }

    private Optional<Profile.Step> sweep(Fields fields, double startHz) {
        fields.refuse("\"sweep\"", "cylinders", "ripple", "steps");
        double fromHz = fromHz(fields);
        double toHz = speed(fields, "sweep");
        String right = "a sweep changes speed by equal ratios, so write one above 0, or use \"ramp\"";
        if (toHz == 0) {
            fields.problem("sweep", "a sweep can't end at 0", right);
        }
        if (fromHz == 0) {
            fields.problem("from", "a sweep can't start at 0", right);
        } else if (!fields.has("from") && startHz == 0) {
            fields.problem("sweep", "this sweep would start at 0, where the step before it ends",
                    "add \"from:\" with a speed above 0, or use \"ramp\"");
        }
        Profile.Step step = new Profile.Sweep(fromHz, toHz, seconds(fields));
        return fields.clean() ? Optional.of(step) : Optional.empty();
    }

    private Optional<Profile.Step> crank(Fields fields) {
        fields.refuse("\"crank\"", "from", "steps");
        double hz = speed(fields, "crank");
        if (hz == 0) {
            fields.problem("crank", "the engine is cranked at 0", "write a speed above 0, like 180 rpm");
        }
        double seconds = seconds(fields);
        int cylinders = fields.whole("cylinders", 1, 16);
        double ripple = fields.quantity("ripple", FormatLimits.RIPPLE) / 100;
        return fields.clean() ? Optional.of(new Profile.Crank(hz, seconds, cylinders, ripple)) : Optional.empty();
    }

    private Optional<Profile.Step> repeat(Fields fields, boolean last, double hz, int level) {
        fields.refuse("\"repeat\"", "from", "for", "cylinders", "ripple");
        int times = times(fields, last, level);
        if (level >= MOST_LEVELS) {
            fields.problem("repeat", "\"repeat\" stands within \"repeat\" too often", "at most " + (MOST_LEVELS - 1) + " deep");
            return Optional.empty();
        }
        fields.required("steps", "[{hold: 800 rpm, for: 2 s}]");
        List<Node> nodes = fields.list("steps", 1, FormatLimits.MOST_STEPS);
        List<Profile.Step> read = list(nodes, hz, level + 1);
        if (!read.isEmpty() && read.get(0) instanceof Profile.Sweep sweep && Double.isNaN(sweep.fromHz())
                && endHz(read.get(read.size() - 1)) == 0) {
            problems.add(nodes.get(0), "this sweep would start at 0 when it is repeated",
                    "add \"from:\" with a speed above 0, or use \"ramp\"");
        }
        return fields.clean() ? Optional.of(new Profile.Repeat(times, read)) : Optional.empty();
    }

    private int times(Fields fields, boolean last, int level) {
        if (!(fields.place("repeat") instanceof ScalarNode scalar && scalar.getValue().equals("forever"))) {
            return fields.whole("repeat", 1, 1_000_000);
        }
        if (level > 1) {
            fields.problem("repeat", "\"repeat: forever\" stands within \"repeat\"", "write a number here");
        } else if (!last) {
            fields.problem("repeat", "\"repeat: forever\" is not the last step, so the steps after it never come",
                    "put it last, or write a number");
        }
        return Profile.Repeat.FOREVER;
    }
}
