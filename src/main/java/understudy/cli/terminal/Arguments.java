package understudy.cli.terminal;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import understudy.pattern.Pattern;
import understudy.pattern.PatternReader;
import understudy.quantity.Range;
import understudy.quantity.WholeNumber;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refusals;
import understudy.report.ReportFile;
import understudy.rig.Spread;

/** Reads what a command line gave, and gathers all that is wrong with it. */
public final class Arguments extends Refusals {

    public void problem(String option, String wrong, String right) {
        add(new Refusal(Location.named(option), wrong, right));
    }

    /** A quantity in the range's base unit, or {@code otherwise} when the option was not given or is wrong. */
    public double quantity(String option, String written, Range range, double otherwise) {
        return written == null ? otherwise : attempt(option, () -> range.typed(written)).orElse(otherwise);
    }

    /**
     * A part as it says on its bag, "4k7 1%": its value in the range's base unit, with its tolerance behind it, or
     * {@code otherwise} without one. Empty when it was not given or is wrong.
     */
    public Optional<Spread> part(String option, String written, Range range, double otherwise) {
        if (written == null) {
            return Optional.empty();
        }
        return attempt(option, () -> Spread.parse(written, range, otherwise));
    }

    /** What {@code reading} gives, unless it refuses. */
    public <T> Optional<T> attempt(String option, Supplier<T> reading) {
        return attempt(Location.named(option), reading);
    }

    /** A whole number from {@code from} to {@code to}, or {@code otherwise} when it was not given or is wrong. */
    public int whole(String option, String written, int from, int to, int otherwise) {
        if (written == null) {
            return otherwise;
        }
        return attempt(option, () -> WholeNumber.read(written, from, to)).orElse(otherwise);
    }

    /** Turns per second of {@code --speed}, or the pattern's default when it was not given or is wrong. */
    public double speedHz(String written, Pattern pattern) {
        double defaultHz = pattern.speed().defaultHz();
        return written == null
                ? defaultHz
                : attempt("--speed", () -> pattern.speed().typedHz(written)).orElse(defaultHz);
    }

    /** The pattern with every {@code --fault} in it, switched on. */
    public Pattern withFaults(List<String> written, Pattern declared) {
        Pattern pattern = declared;
        for (String fault : written) {
            pattern = value(PatternReader.readFault(fault, pattern)).map(pattern::withFault).orElse(pattern);
        }
        return pattern;
    }

    /** A name that ends in .wav; any other would hardly be meant, and might be a file that somebody needs. */
    public Optional<Path> soundFile(String option, String written, String right) {
        try {
            if (written.toLowerCase(Locale.ROOT).endsWith(".wav")) {
                return Optional.of(Path.of(written));
            }
        } catch (InvalidPathException e) {
            // said below
        }
        problem(option, "\"" + written + "\" is no name for a sound file", right);
        return Optional.empty();
    }

    /**
     * A file to draw into, one whose ending is among {@code endings}, in a folder that exists; empty when it was not
     * given or is wrong.
     */
    public Optional<Path> picture(String option, String written, List<String> endings) {
        return toWrite(option, written, "a picture", endings);
    }

    /** Likewise a file for a result. */
    public Optional<Path> jsonFile(String option, String written) {
        return toWrite(option, written, "a result", List.of(".json"));
    }

    /** Likewise a file for a table. */
    public Optional<Path> tableFile(String option, String written) {
        return toWrite(option, written, "a table", List.of(".csv"));
    }

    /** Likewise a file for a job: all of it, or what happened as a table. */
    public Optional<Path> jobFile(String option, String written) {
        return toWrite(option, written, "a job's file", List.of(".json", ".csv"));
    }

    /** Likewise a file for a report. */
    public Optional<Path> reportFile(String option, String written) {
        return toWrite(option, written, "a report", ReportFile.ENDINGS);
    }

    private Optional<Path> toWrite(String option, String written, String what, List<String> endings) {
        if (written == null) {
            return Optional.empty();
        }
        try {
            Path file = Path.of(written);
            Path folder = file.toAbsolutePath().getParent();
            boolean rightEnding = endings.stream().anyMatch(written.toLowerCase(Locale.ROOT)::endsWith);
            if (rightEnding && !Files.isDirectory(folder)) {
                problem(option, "there is no folder " + folder, "make it first");
                return Optional.empty();
            } else if (rightEnding) {
                return Optional.of(file);
            }
        } catch (InvalidPathException e) {
            // said below
        }
        problem(option, "\"" + written + "\" is no name for " + what, "give a name that ends in " + String.join(" or ", endings));
        return Optional.empty();
    }
}
