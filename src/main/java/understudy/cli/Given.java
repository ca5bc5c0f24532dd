package understudy.cli;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import understudy.audio.AudioException;
import understudy.pattern.Pattern;
import understudy.pattern.PatternReader;
import understudy.pattern.Problem;
import understudy.pattern.Result;
import understudy.plot.PlotFile;
import understudy.quantity.QuantityException;
import understudy.quantity.Range;

/** Reads what a command line gave, and gathers all that is wrong with it, so that one try shows the user everything. */
final class Given {

    private final List<String> problems = new ArrayList<>();

    void problem(String option, String wrong, String right) {
        problems.add(option + ": " + wrong + "; " + right);
    }

    /** What the audio room refused; its message already says what would be right. */
    void problem(String option, AudioException refusal) {
        problems.add(option + ": " + refusal.getMessage());
    }

    /** A quantity in the range's base unit, or {@code otherwise} when the option was not given or is wrong. */
    double quantity(String option, String written, Range range, double otherwise) {
        return written == null ? otherwise : attempt(option, () -> range.parse(written)).orElse(otherwise);
    }

    /** What {@code reading} gives, unless it finds the quantity wrong. */
    <T> Optional<T> attempt(String option, Supplier<T> reading) {
        try {
            return Optional.of(reading.get());
        } catch (QuantityException e) {
            problem(option, e.wrong(), e.right());
            return Optional.empty();
        }
    }

    /** A value, unless it was refused. */
    <T> Optional<T> value(Result<T> result) {
        result.problems().stream().map(Problem::toString).forEach(problems::add);
        return result.value();
    }

    /** A whole number from {@code from} to {@code to}, or {@code otherwise} when it was not given or is wrong. */
    int whole(String option, String written, int from, int to, int otherwise) {
        if (written == null) {
            return otherwise;
        }
        try {
            int number = Integer.parseInt(written.strip());
            if (number >= from && number <= to) {
                return number;
            }
        } catch (NumberFormatException e) {
            // said below, as for a number out of range
        }
        problem(option, "\"" + written + "\" will not do", "give a whole number from " + from + " to " + to);
        return otherwise;
    }

    /** Turns per second of {@code --speed}, or the pattern's default when it was not given or is wrong. */
    double speedHz(String written, Pattern pattern) {
        double defaultHz = pattern.speed().defaultHz();
        return written == null
                ? defaultHz
                : attempt("--speed", () -> pattern.speed().parseHz(written)).orElse(defaultHz);
    }

    /** The pattern with every {@code --fault} in it, switched on. */
    Pattern withFaults(List<String> written, Pattern declared) {
        Pattern pattern = declared;
        for (String fault : written) {
            pattern = value(PatternReader.readFault(fault, pattern)).map(pattern::withFault).orElse(pattern);
        }
        return pattern;
    }

    /** A name that ends in .wav; any other would hardly be meant, and might be a file that somebody needs. */
    Optional<Path> soundFile(String option, String written, String right) {
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

    /** A name that ends in .json, in a folder that is there. */
    Optional<Path> jsonFile(String option, String written) {
        try {
            Path file = Path.of(written);
            Path folder = file.toAbsolutePath().getParent();
            if (written.toLowerCase(Locale.ROOT).endsWith(".json") && Files.isDirectory(folder)) {
                return Optional.of(file);
            } else if (written.toLowerCase(Locale.ROOT).endsWith(".json")) {
                problem(option, "there is no folder " + folder, "make it first");
                return Optional.empty();
            }
        } catch (InvalidPathException e) {
            // said below
        }
        problem(option, "\"" + written + "\" is no name for a result", "give a name that ends in .json");
        return Optional.empty();
    }

    /** A name for a picture that can be drawn, in a folder that is there. */
    Optional<Path> picture(String option, String written) {
        try {
            Path file = Path.of(written);
            Path folder = file.toAbsolutePath().getParent();
            if (PlotFile.canWrite(file) && Files.isDirectory(folder)) {
                return Optional.of(file);
            } else if (PlotFile.canWrite(file)) {
                problem(option, "there is no folder " + folder, "make it first");
                return Optional.empty();
            }
        } catch (InvalidPathException e) {
            // said below
        }
        problem(option, "\"" + written + "\" is no name for a picture", "give a name that ends in .png or .svg");
        return Optional.empty();
    }

    /** Throws all that was wrong, if anything was. */
    void refuse() {
        if (!problems.isEmpty()) {
            throw new BadInput(problems);
        }
    }
}
