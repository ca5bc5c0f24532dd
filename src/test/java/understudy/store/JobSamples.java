package understudy.store;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import understudy.pattern.PatternLibrary;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Refused;
import understudy.text.Source;
import understudy.trace.Answer;
import understudy.trace.CircuitLibrary;
import understudy.trace.CircuitReader;
import understudy.trace.Detail;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Job;
import understudy.trace.NextStep;
import understudy.trace.Numbered;
import understudy.trace.Place;
import understudy.trace.Proof;
import understudy.trace.Subjects;

/** Jobs on the shipped circuits, hunted by somebody who does what is next, now and then something else; by seed. */
public final class JobSamples {

    public static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");
    /** What spoils files, tables, SQL and sorting when it is not expected. */
    private static final List<String> WORDS = List.of("", "rough ground", "Größe; \"loom\", 'a'", "two\nlines\r\n", "ÄÖÜ ß ẞ",
            "Ὀδυσσεύς", "配線 故障", "tab\there", " blank at both ends ", "=1+1", "{\"a\": 1}", "%_\\", "\ud83d\ude9c");

    private final Random random;
    private Hunt hunt;
    private Instant now;

    private JobSamples(Job job, long seed) {
        this.random = new Random(seed);
        this.hunt = Hunt.of(job);
        this.now = job.begun();
    }

    private static Job.Subject speedometer() {
        return subject("fieldhand-4-speedometer");
    }

    private static Job.Subject wheel() {
        return subject("fieldhand-4-wheel-rear-left");
    }

    private static Job.Subject subject(String circuitId) {
        Source circuit = CircuitLibrary.open().source(circuitId).value().orElseThrow();
        String pattern = CircuitReader.read(circuit).value().orElseThrow().patternName();
        return new Job.Subject(circuit, PatternLibrary.open().source(pattern).value().orElseThrow());
    }

    /** Nothing has happened yet. */
    public static Job fresh(String name) {
        return new Job(name, NOON, "Fieldhand 4, bench", "drops to zero on rough ground", "the instructor", speedometer(),
                Optional.of(wheel()), new Job.Equipment(Optional.of("bench"), Optional.of("reluctor-adaptive"),
                        new Range(-0.3, 5.5, Unit.VOLT), List.of("rig bench", "played silently")), List.of());
    }

    /** Begun at a time of its own, with so many things done at most. */
    public static Hunt random(String name, long seed, int mostEvents) {
        Random of = new Random(seed);
        Instant begun = NOON.plus(Duration.ofMillis(of.nextInt(1_000_000_000)));
        List<String> lines = new ArrayList<>();
        for (int i = of.nextInt(4); i > 0; i--) {
            lines.add(words(of));
        }
        double from = -of.nextDouble();
        Job job = new Job(name, begun, words(of), words(of), words(of), of.nextBoolean() ? speedometer() : wheel(),
                of.nextBoolean() ? Optional.of(wheel()) : Optional.empty(),
                new Job.Equipment(of.nextBoolean() ? Optional.of(words(of)) : Optional.empty(),
                        of.nextBoolean() ? Optional.of(words(of)) : Optional.empty(),
                        new Range(from, from + 6 + of.nextDouble(), Unit.VOLT), lines), List.of());
        return new JobSamples(job, of.nextLong()).on(mostEvents);
    }

    /** Goes on with a hunt, by what is next. */
    public static Entry next(Hunt hunt, long seed) {
        JobSamples samples = new JobSamples(hunt.job(), seed);
        return samples.due(3);
    }

    private static String words(Random random) {
        return WORDS.get(random.nextInt(WORDS.size())) + (random.nextBoolean() ? "" : " " + random.nextInt(1000));
    }

    private Hunt on(int mostEvents) {
        int fault = random.nextInt(hunt.circuit().points().size() + 1);
        int most = random.nextInt(mostEvents + 1);
        while (hunt.job().events().size() < most) {
            now = now.plusNanos(random.nextInt(1_000_000_000) * 100L);
            Entry entry = random.nextInt(6) == 0 ? aside() : due(fault);
            try {
                hunt = hunt.after(now, entry);
            } catch (Refused refused) {
                if (hunt.next() instanceof NextStep.Ended) {
                    return hunt;
                }
            }
        }
        return hunt;
    }

    private Entry aside() {
        return switch (random.nextInt(5)) {
            case 0 -> new Entry.Noted(words(random));
            case 1 -> new Entry.Withdrawn(1 + random.nextInt(hunt.job().events().size() + 1), words(random));
            case 2 -> new Entry.WentOn(words(random));
            case 3 -> corrected(Detail.values()[random.nextInt(Detail.values().length)]);
            default -> new Entry.Proven(Proof.values()[random.nextInt(Proof.values().length)], words(random));
        };
    }

    private Entry corrected(Detail detail) {
        return new Entry.Corrected(detail, hunt.written(detail), words(random));
    }

    private Entry due(int fault) {
        NextStep next = hunt.next();
        if (next instanceof NextStep.Caution caution) {
            return new Entry.Cautioned(caution.hazards());
        } else if (next instanceof NextStep.Inject inject) {
            return inject.measured() ? injected(inject.place(), inject.purpose() != NextStep.Purpose.HUNT || fault <= inject.place().point())
                    : new Entry.PinMeasured(inject.place(), 0.1 * random.nextDouble());
        } else if (next instanceof NextStep.Prove prove) {
            return new Entry.Proven(prove.outstanding().get(0), words(random));
        } else if (next instanceof NextStep.Repair) {
            return new Entry.Repaired(words(random));
        } else if (next instanceof NextStep.Close) {
            return new Entry.Closed(words(random), random.nextBoolean() ? Optional.of(random.nextBoolean()) : Optional.empty());
        }
        return new Entry.Withdrawn(last(), "goes on"); // closed: the closing is taken back
    }

    private int last() {
        return hunt.standing().stream().filter(event -> !(event.entry() instanceof Entry.Corrected)).mapToInt(Numbered::number).max().orElseThrow();
    }

    private Entry.Injected injected(Place place, boolean sound) {
        Subjects.Subject subject = place.onReference() ? hunt.subjects().reference().orElseThrow() : hunt.subjects().suspect();
        double speedHz = subject.speedHz();
        var expected = subject.expected(speedHz);
        Answer answer = sound ? Answer.value(expected.value())
                : Answer.of(Answer.Kind.values()[1 + random.nextInt(Answer.Kind.values().length - 1)]);
        int points = hunt.circuitOf(place).points().size();
        Optional<Integer> moved = answer.kind() == Answer.Kind.COMES_AND_GOES && random.nextBoolean()
                ? Optional.of(place.point() + 1 + random.nextInt(points - place.point())) : Optional.empty();
        return new Entry.Injected(place, speedHz, subject.frequencyHz(speedHz), random.nextBoolean() ? 1 : 0.3, expected, answer,
                random.nextBoolean() ? Optional.of(0.6 + 0.4 * random.nextDouble()) : Optional.empty(), moved);
    }
}
