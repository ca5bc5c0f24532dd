package understudy.sweep;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import understudy.pattern.NamedOutput;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.PatternLibrary;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.reading.Expected;
import understudy.reading.OwnReading;
import understudy.reading.Reading;
import understudy.reading.ReadingReader;
import understudy.reading.SignalFrequency;
import understudy.refusal.Control;
import understudy.refusal.Deed;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refusals;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;
import understudy.refusal.Result;
import understudy.text.Nearest;
import understudy.text.Shelf;
import understudy.trace.Circuit;
import understudy.trace.CircuitFiles;
import understudy.trace.CircuitLibrary;
import understudy.trace.Subjects.Subject;

/**
 * What a module is swept with, and what its display should make of it.
 *
 * @param id      of the circuit, or of the pattern where there is no circuit
 * @param title   one line
 * @param pattern that is played
 * @param output  of it
 * @param reading what the display shows
 * @param by      what says so: "the reading given", "the circuit's file"
 * @param vehicle if the circuit's file names one
 * @param input   of the module, if the circuit's file tells it
 */
public record SweptCircuit(String id, String title, Pattern pattern, Output output, Reading reading, String by, Optional<String> vehicle,
        Optional<String> input) {

    /**
     * A circuit or a pattern by its name or file.
     *
     * @throws Refused with all that is wrong
     */
    public static SweptCircuit find(String name, String outputName, String readingWords, Refusals given) {
        known(name);
        Optional<Subject> subject = Optional.of(name).filter(CircuitFiles::is).map(CircuitFiles::find).map(CircuitFiles::read);
        Optional<Circuit> circuit = subject.map(Subject::circuit);
        Pattern pattern = subject.map(Subject::pattern).orElseGet(() -> value(PatternLibrary.open().find(name)));
        Optional<Output> output = subject.filter(one -> outputName == null).map(Subject::output)
                .or(() -> NamedOutput.find(pattern, outputName, given));
        Optional<Reading> told = Optional.ofNullable(readingWords)
                .flatMap(words -> given.value(ReadingReader.read(words, Location.of(Control.READING))));
        output.filter(one -> !follows(one)).ifPresent(one -> given.add(new Refusal(Location.named(name),
                "what a module counts of its output " + one.name() + " does not follow the speed",
                "take an output with teeth, or a tone that does")));
        given.refuse();
        Reading reading = told.or(() -> circuit.map(Circuit::reading))
                .orElseGet(() -> OwnReading.of(pattern, output.orElseThrow()).orElseThrow());
        String by = told.isPresent() ? "the reading given" : circuit.isPresent() ? "the circuit's file" : "the pattern";
        return new SweptCircuit(circuit.map(Circuit::id).orElse(pattern.id()), circuit.map(Circuit::title).orElse(pattern.title()),
                pattern, output.orElseThrow(), reading, by, circuit.flatMap(Circuit::vehicle), circuit.flatMap(Circuit::input));
    }

    /** For a name that is neither, the user hears of both. */
    private static void known(String name) {
        List<String> circuits = CircuitLibrary.open().ids();
        List<String> patterns = PatternLibrary.open().ids();
        if (!Shelf.isFileName(name) && !circuits.contains(name) && !patterns.contains(name)) {
            List<String> near = Nearest.to(name, Stream.concat(circuits.stream(), patterns.stream()).toList());
            throw new Refused(new Refusal(Location.named(name), "there is no circuit or pattern of this name", near.isEmpty()
                    ? Remedy.of("shipped circuits are " + String.join(", ", circuits) + ", and ").perform(Deed.LIST_PATTERNS, "")
                            .then(" lists the patterns")
                    : Remedy.of("did you mean " + near.get(0) + "?")));
        }
    }

    private static <T> T value(Result<T> result) {
        return result.value().orElseThrow(() -> new Refused(result.problems()));
    }

    private static boolean follows(Output output) {
        return !SignalFrequency.hz(output, 1).equals(SignalFrequency.hz(output, 2));
    }

    /** The same, with another reading expected. */
    public SweptCircuit reading(Reading other, String saidBy) {
        return new SweptCircuit(id, title, pattern, output, other, saidBy, vehicle, input);
    }

    public double frequencyHz(double speedHz) {
        return SignalFrequency.hz(output, speedHz).orElseThrow();
    }

    /** Empty where the reading says nothing. */
    public Optional<Expected> expected(double speedHz) {
        return reading.expected(frequencyHz(speedHz));
    }

    /** "600 rpm, 170 Hz", or one of them where they are the same. */
    public String words(double speedHz) {
        String speed = pattern.speed().print(speedHz);
        String hertz = new Quantity(frequencyHz(speedHz), Unit.HERTZ).rounded(4);
        return speed.equals(hertz) ? speed : speed + ", " + hertz;
    }
}
