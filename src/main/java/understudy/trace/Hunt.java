package understudy.trace;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import understudy.pattern.Hazard;
import understudy.refusal.Refused;

/**
 * How a job stands: everything that follows from its events, computed afresh. Immutable; the terminal and any other
 * screen ask the same one.
 */
public final class Hunt {

    private final Job job;
    private final Subjects subjects;
    private final List<Numbered> events;
    private final Evidence evidence;
    /** Found when it is first asked for, since that may take a moment; two that find it at once find the same. */
    private NextStep next;

    private Hunt(Job job, Subjects subjects) {
        this.job = job;
        this.subjects = subjects;
        this.events = numbered(job);
        this.evidence = new Evidence(subjects.suspect().circuit(), standing());
    }

    /** @throws Refused when the circuit or pattern that the job keeps can't be read */
    public static Hunt of(Job job) {
        return new Hunt(job, Subjects.of(job));
    }

    private static List<Numbered> numbered(Job job) {
        Set<Integer> withdrawn = new HashSet<>();
        for (Job.Event event : job.events()) {
            if (event.entry() instanceof Entry.Withdrawn withdrawal) {
                withdrawn.add(withdrawal.number());
            }
        }
        List<Numbered> numbered = new ArrayList<>();
        for (Job.Event event : job.events()) {
            int number = numbered.size() + 1;
            numbered.add(new Numbered(number, event.at(), event.entry(), !withdrawn.contains(number)));
        }
        return List.copyOf(numbered);
    }

    public Job job() {
        return job;
    }

    public Subjects subjects() {
        return subjects;
    }

    /** The suspect circuit. */
    public Circuit circuit() {
        return subjects.suspect().circuit();
    }

    /** All events, the withdrawn ones too. */
    public List<Numbered> events() {
        return events;
    }

    /** Those that count. */
    public List<Numbered> standing() {
        return events.stream().filter(Numbered::standing).toList();
    }

    /** How many injections there were, the withdrawn ones too. */
    public int injectionCount() {
        return (int) events.stream().filter(event -> event.entry() instanceof Entry.Injected).count();
    }

    /** What the evidence says of every suspect, from the sensor's side to the module. */
    public Odds odds() {
        return evidence.odds();
    }

    /** What it says by now; once there was a repair and it held, what it said then. */
    public Finding finding() {
        return evidence.finding();
    }

    /** The injections that the finding rests on: on the suspect circuit, good or bad, and no proof of a repair. */
    public List<Numbered> counted() {
        return evidence.counted();
    }

    /** Pairs of injections that contradict each other. */
    public List<Clash> clashes() {
        return evidence.clashes();
    }

    /** Whether an injection on the reference circuit, or the user, has settled that the method works. */
    public boolean methodProven() {
        return standing().stream().anyMatch(event -> event.entry() instanceof Entry.Injected injected
                && injected.place().onReference() && Judgement.of(injected).verdict() == Verdict.GOOD);
    }

    /** Whether the display came back where the sensor's signal enters, after the latest repair. */
    public boolean repairProven() {
        return evidence.repairProven();
    }

    public Set<Proof> proven() {
        Set<Proof> proven = EnumSet.noneOf(Proof.class);
        standing().forEach(event -> {
            if (event.entry() instanceof Entry.Proven proof) {
                proven.add(proof.proof());
            }
        });
        return proven;
    }

    private boolean has(Class<? extends Entry> kind) {
        return standing().stream().anyMatch(event -> kind.isInstance(event.entry()));
    }

    /** How the job was closed, with its words as last corrected; empty while it is not. */
    public Optional<Entry.Closed> closing() {
        Optional<Entry.Closed> closing = Optional.empty();
        for (Numbered event : standing()) {
            if (event.entry() instanceof Entry.Closed closed) {
                closing = Optional.of(closed);
            } else if (event.entry() instanceof Entry.Corrected corrected && corrected.detail() == Detail.REMARK) {
                closing = closing.map(closed -> new Entry.Closed(corrected.words(), closed.ownSensorWorks()));
            }
        }
        return closing;
    }

    /** What stands there now, of what was written down by hand. */
    public String written(Detail detail) {
        return switch (detail) {
            case VEHICLE -> job.vehicle();
            case COMPLAINT -> job.complaint();
            case WHO -> job.who();
            case REMARK -> closing().map(Entry.Closed::words).orElse("");
        };
    }

    private List<Proof> outstanding() {
        Set<Proof> proven = proven();
        return EnumSet.allOf(Proof.class).stream().filter(proof -> !proven.contains(proof)).toList();
    }

    /** The hazards of this job: those of the patterns on both circuits, and those of every circuit. */
    public List<Hazard> hazards() {
        Set<Hazard> hazards = new LinkedHashSet<>(subjects.suspect().pattern().hazards());
        subjects.reference().ifPresent(reference -> hazards.addAll(reference.pattern().hazards()));
        hazards.addAll(Hazard.general());
        return List.copyOf(hazards);
    }

    /** What to do next. */
    public NextStep next() {
        if (next == null) {
            next = findNext();
        }
        return next;
    }

    private NextStep findNext() {
        if (has(Entry.Closed.class)) {
            return new NextStep.Ended();
        } else if (!has(Entry.Cautioned.class)) {
            return new NextStep.Caution(hazards());
        } else if (subjects.reference().isPresent() && !methodProven() && !has(Entry.WentOn.class)) {
            return inject(new Place(true, subjects.reference().get().circuit().firstInjectable()), NextStep.Purpose.METHOD,
                    "It is a circuit that works: if the display reads right here, rig and method are proven.");
        } else if (evidence.repairToProve()) {
            return inject(new Place(false, circuit().firstInjectable()), NextStep.Purpose.REPAIR,
                    "There the sensor's signal enters: if the display reads right, the whole way to the module is sound.");
        } else if (repairProven()) {
            return new NextStep.Close(finding());
        }
        Finding finding = finding();
        Optional<Advice> advice = finding.decided() ? Optional.empty() : Advice.next(circuit(), odds());
        if (advice.isPresent()) {
            return inject(new Place(false, advice.get().point()), NextStep.Purpose.HUNT, advice.get().reason());
        } else if (finding.touches(Suspect.Side.MODULE) && !outstanding().isEmpty()) {
            return new NextStep.Prove(outstanding(), finding.probability());
        }
        return new NextStep.Repair(finding);
    }

    private NextStep inject(Place place, NextStep.Purpose purpose, String reason) {
        return new NextStep.Inject(place, purpose, measured(place), reason);
    }

    /** Whether the pins at a place were measured since the clips were last moved, and may be clipped on to. */
    public boolean measured(Place place) {
        Optional<Entry.PinMeasured> latest = Optional.empty();
        for (Numbered event : standing()) {
            if (event.entry() instanceof Entry.PinMeasured pin) {
                latest = Optional.of(pin);
            }
        }
        return latest.isPresent() && latest.get().place().equals(place) && pinAllowed(latest.get());
    }

    /** Whether so many volts may lie on a pin that the rig is clipped on to. */
    public boolean pinAllowed(Entry.PinMeasured pin) {
        return pin.volts() >= job.equipment().pinVolts().from() && pin.volts() <= job.equipment().pinVolts().to();
    }

    /**
     * The hunt after one thing more.
     *
     * @throws Refused when that can't be, or not yet; nothing has changed then
     */
    public Hunt after(Instant at, Entry entry) {
        new Admission(this).check(entry);
        Hunt after = new Hunt(job.with(at, entry), subjects);
        if (!after.odds().possible()) {
            throw new Refused("no single fault explains these readings, and the circuit file says that none is ever wrong",
                    "withdraw one that you doubt, or say in the file how often readings are wrong");
        }
        return after;
    }

    /** Names the place, for a sentence. */
    public String name(Place place) {
        return circuitOf(place).points().get(place.point()).name();
    }

    /** The circuit that a place is on. */
    public Circuit circuitOf(Place place) {
        return subjects.of(place).circuit();
    }
}
