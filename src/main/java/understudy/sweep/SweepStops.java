package understudy.sweep;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import understudy.motion.Motion;
import understudy.pattern.PatternReader;
import understudy.pattern.Profile;
import understudy.pattern.Speed;
import understudy.reading.Learned;
import understudy.refusal.Control;
import understudy.refusal.Location;
import understudy.refusal.Refusals;
import understudy.refusal.Refused;

/** Reads the stops of a sweep: a list of speeds, or the holds of a profile. */
public final class SweepStops {

    /** As many as a scale can be learned from. */
    public static final int MOST = Learned.MOST_PAIRS;

    private static final Pattern SPAN = Pattern.compile("(.+?)\\s+to\\s+(.+?)\\s+by\\s+(.+)");
    private static final Pattern BARE = Pattern.compile("\\d+(?:\\.\\d*)?|\\.\\d+");
    /** A comma close between digits: a decimal comma, or two numbers? */
    private static final Pattern CLOSE = Pattern.compile("[\\d.]*\\d,\\d[\\d.,]*");
    /** A last step this near to the end, in steps, is the end: far above rounding. */
    private static final double NEAR = 1e-6;
    private static final String EXAMPLE = "write speeds like \"200 rpm, 400 rpm\", or \"200 to 2000 by 200 rpm\"";

    private final Speed speed;
    private final Refusals given;

    public SweepStops(Speed speed, Refusals given) {
        this.speed = speed;
        this.given = given;
    }

    /** The same speeds in reverse behind the list, the last one once. */
    public static List<SweepStop> andBack(List<SweepStop> steps, double rampSeconds) {
        List<SweepStop> all = new ArrayList<>(steps);
        for (int i = steps.size() - 2; i >= 0; i--) {
            all.add(stop(steps.get(i).speedHz(), rampSeconds, steps.get(i).dwellSeconds()));
        }
        return all;
    }

    /** Empty where something can't be read. */
    public List<SweepStop> list(String written, double rampSeconds, double dwellSeconds) {
        List<SweepStop> steps = new ArrayList<>();
        for (String item : withUnits(written)) {
            for (double hz : given.attempt(Location.of(Control.SPEEDS), () -> speeds(item)).orElse(new double[0])) {
                steps.add(stop(hz, rampSeconds, dwellSeconds));
            }
        }
        return steps;
    }

    private static SweepStop stop(double hz, double rampSeconds, double dwellSeconds) {
        return new SweepStop(hz, List.of(ramp(hz, rampSeconds)), dwellSeconds);
    }

    /** From wherever it is; one that takes no time is as quick as the hand. */
    private static Profile.Ramp ramp(double hz, double seconds) {
        return new Profile.Ramp(Double.NaN, hz, Math.max(Motion.HAND_RAMP_SECONDS, seconds));
    }

    /** Refuses more than can be stepped through. */
    public void limit(Control control, double count) {
        if (count > MOST) {
            given.add(control, "these are " + Math.round(count) + " speeds", "at most " + MOST + " can be stepped through");
        }
    }

    /** The items, in which a number alone has taken the unit of the next one that has one. */
    private List<String> withUnits(String written) {
        List<String> items = new ArrayList<>();
        Matcher close = CLOSE.matcher(written);
        if (close.find()) {
            String numbers = close.group();
            given.add(Control.SPEEDS, "\"" + numbers + "\" can be one number or several", "write a number with a point, like "
                    + numbers.replaceFirst(",", ".").replaceFirst(",.*", "") + ", and a blank between two, like " + numbers.replace(",", ", "));
            return items;
        }
        String unit = "";
        String[] split = written.split("[,;\n]");
        for (int i = split.length - 1; i >= 0; i--) {
            String item = split[i].strip();
            if (item.isEmpty()) {
                continue;
            }
            Matcher span = SPAN.matcher(item);
            List<String> numbers = span.matches() ? List.of(span.group(1), span.group(2), span.group(3)) : List.of(item);
            List<String> whole = new ArrayList<>(numbers);
            for (int n = numbers.size() - 1; n >= 0; n--) {
                String number = numbers.get(n).strip();
                boolean bare = BARE.matcher(number).matches();
                unit = bare ? unit : number.replaceFirst("^[-+.\\d\\s]*", "");
                whole.set(n, bare && !unit.isEmpty() ? number + " " + unit : number);
            }
            items.add(0, whole.size() == 1 ? whole.get(0) : whole.get(0) + " to " + whole.get(1) + " by " + whole.get(2));
        }
        if (items.isEmpty()) {
            given.add(Control.SPEEDS, "there are no speeds in \"" + written + "\"", EXAMPLE);
        }
        return items;
    }

    private double[] speeds(String item) {
        Matcher span = SPAN.matcher(item);
        if (!span.matches() && item.contains(" to ")) {
            throw new Refused("\"" + item + "\" does not say how far apart", "write it like \"200 to 2000 by 200 rpm\"");
        } else if (!span.matches()) {
            return new double[] {speed.typedHz(item)};
        }
        double first = speed.typedHz(span.group(1));
        double last = speed.typedHz(span.group(2));
        // a step may be smaller than the lowest speed
        double by = new Speed(speed.unit(), speed.metresPerTurn(), 0, 0, speed.toHz()).typedHz(span.group(3));
        double count = Math.floor(Math.abs(last - first) / by + NEAR) + 1;
        if (!(count <= MOST)) {
            throw new Refused("\"" + item + "\" makes too many speeds", "at most " + MOST + " can be stepped through");
        }
        double[] speeds = new double[(int) count];
        for (int i = 0; i < speeds.length; i++) {
            double hz = first + i * Math.signum(last - first) * by;
            // the last one may miss the end of the allowed range by a rounding error
            speeds[i] = Math.max(speed.fromHz(), Math.min(speed.toHz(), hz));
        }
        return speeds;
    }

    /** A stop at every hold, as long as it holds; ramps and sweeps lead there. Empty where it can't be read. */
    public List<SweepStop> profile(String written) {
        Optional<Profile> read = given.value(PatternReader.readProfile(written, speed));
        List<SweepStop> steps = new ArrayList<>();
        if (read.isPresent() && fits(read.get().steps())) {
            stops(read.get().steps(), new ArrayList<>(), steps);
            if (steps.isEmpty()) {
                given.add(Control.PROFILE, "it holds no speed, and the display is read where it holds",
                        "add steps like \"hold: 800 rpm, for: 2 s\"");
            }
        }
        return steps;
    }

    private boolean fits(List<Profile.Step> all) {
        double count = holds(all);
        if (Double.isNaN(count)) {
            given.add(Control.PROFILE, "the display is read where it holds a speed, so it can't crank, follow, or repeat for ever or without a hold",
                    "use hold, ramp and sweep, and repeat some of them with times");
        }
        limit(Control.PROFILE, count);
        return count <= MOST;
    }

    /** How often a speed is held; NaN with a step that a sweep can't have. */
    private static double holds(List<Profile.Step> all) {
        double count = 0;
        for (Profile.Step step : all) {
            if (step instanceof Profile.Hold) {
                count++;
            } else if (step instanceof Profile.Repeat repeat && repeat.times() != Profile.Repeat.FOREVER && holds(repeat.steps()) > 0) {
                count += repeat.times() * holds(repeat.steps());
            } else if (!(step instanceof Profile.Ramp || step instanceof Profile.Sweep)) {
                return Double.NaN;
            }
        }
        return count;
    }

    private static void stops(List<Profile.Step> all, List<Profile.Step> way, List<SweepStop> steps) {
        for (Profile.Step step : all) {
            if (step instanceof Profile.Ramp || step instanceof Profile.Sweep) {
                way.add(step);
            } else if (step instanceof Profile.Repeat repeat) {
                for (int i = 0; i < repeat.times() && steps.size() <= MOST; i++) {
                    stops(repeat.steps(), way, steps);
                }
            } else if (step instanceof Profile.Hold hold) {
                way.add(ramp(hold.hz(), 0));
                steps.add(new SweepStop(hold.hz(), way, hold.seconds()));
                way.clear();
            }
        }
    }
}
