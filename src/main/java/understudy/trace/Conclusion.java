package understudy.trace;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * What the evidence of a job says, in sentences that it bears out.
 *
 * @param result    one sentence, with its probability
 * @param convicted those that stand convicted; empty while nothing does
 * @param evidence  why, a sentence each
 * @param against   what speaks against it, a sentence each
 */
public record Conclusion(String result, List<Suspect> convicted, List<String> evidence, List<String> against) {

    public Conclusion {
        convicted = List.copyOf(convicted);
        evidence = List.copyOf(evidence);
        against = List.copyOf(against);
    }

    public static Conclusion of(Hunt hunt) {
        return new Conclusion(result(hunt), convicted(hunt), evidence(hunt), against(hunt));
    }

    private static List<Suspect> convicted(Hunt hunt) {
        Finding finding = hunt.finding();
        boolean held = finding.decided() && (!finding.touches(Suspect.Side.MODULE) || allProven(hunt));
        return held ? finding.suspects() : List.of();
    }

    private static boolean allProven(Hunt hunt) {
        return hunt.proven().size() == Proof.values().length;
    }

    private static String result(Hunt hunt) {
        Finding finding = hunt.finding();
        String sure = Certainty.of(finding.probability());
        String asked = Certainty.of(hunt.circuit().confidence());
        if (hunt.counted().isEmpty()) {
            return "Nothing is found yet: no injection on the suspect circuit counts.";
        } else if (!finding.decided()) {
            return "No part stands convicted. The likeliest to be at fault is " + finding.names() + ", with a probability of " + sure
                    + "; " + asked + " are asked for.";
        } else if (finding.is(Suspect.Side.SENSOR)) {
            return "The circuit is sound from " + firstPoint(hunt) + " to the module. The fault is on the sensor's side (sensor,"
                    + " ring or air gap), with a probability of " + sure + ".";
        } else if (finding.touches(Suspect.Side.MODULE) && !allProven(hunt)) {
            return "The evidence points at " + finding.names() + ", with a probability of " + sure + ". The module does not stand"
                    + " convicted, since not everything was proven that must be proven first.";
        }
        return "The fault is in " + finding.names() + ", " + hunt.circuit().between(finding.suspects()) + ", with a probability of " + sure
                + ".";
    }

    private static String firstPoint(Hunt hunt) {
        return hunt.circuit().points().get(hunt.circuit().firstInjectable()).name();
    }

    private static List<String> evidence(Hunt hunt) {
        Finding finding = hunt.finding();
        int lowest = finding.suspects().get(0).index();
        int highest = finding.suspects().get(finding.suspects().size() - 1).index();
        List<String> sentences = new ArrayList<>();
        if (hunt.counted().isEmpty()) {
            return sentences;
        }
        List<Numbered> bad = at(hunt, Verdict.BAD, point -> point < lowest, Comparator.reverseOrder());
        if (!bad.isEmpty()) {
            sentences.add("Injected at " + place(hunt, bad) + " (" + Listing.stepsOf(bad) + "), the signal did not make the display"
                    + " read as it should: the fault lies between there and the module, or in the module.");
        } else if (lowest > 0) {
            sentences.add("No injection on the sensor's side of " + finding.names() + " read bad; that the fault is not there"
                    + " rests only on how likely each part is to fail, as the circuit file states it.");
        }
        List<Numbered> good = at(hunt, Verdict.GOOD, point -> point >= highest, Comparator.naturalOrder());
        if (!good.isEmpty()) {
            sentences.add("Injected at " + place(hunt, good) + " (" + Listing.stepsOf(good) + "), it did: everything from there to"
                    + " the display is sound.");
        } else if (highest < hunt.circuit().points().size()) {
            sentences.add("No injection on the module's side of " + finding.names() + " read good; that the fault is not there"
                    + " rests only on how likely each part is to fail, as the circuit file states it.");
        }
        moved(hunt, index -> index >= lowest && index <= highest, sentences);
        return sentences;
    }

    private static List<String> against(Hunt hunt) {
        Finding finding = hunt.finding();
        int lowest = finding.suspects().get(0).index();
        int highest = finding.suspects().get(finding.suspects().size() - 1).index();
        List<String> sentences = new ArrayList<>();
        for (Numbered event : hunt.counted()) {
            int point = injected(event).place().point();
            boolean good = verdict(event) == Verdict.GOOD;
            if (good ? point < lowest : point >= highest) {
                sentences.add("Step " + event.number() + " speaks against it: at " + hunt.name(injected(event).place())
                        + " the signal read " + (good ? "good" : "bad") + ".");
            }
        }
        moved(hunt, index -> index < lowest || index > highest, sentences);
        return sentences;
    }

    /** Readings that can't all be right if there is one fault: "step 5 (good) and steps 7 and 9 (bad)". */
    public static List<String> clashes(Hunt hunt) {
        Map<Integer, List<Integer>> badOfGood = new TreeMap<>();
        hunt.clashes().forEach(clash -> badOfGood.computeIfAbsent(clash.goodNumber(), good -> new ArrayList<>())
                .add(clash.badNumber()));
        return badOfGood.entrySet().stream().map(clash -> "step " + clash.getKey() + " (good) and "
                + Listing.steps(clash.getValue()).orElseThrow() + " (bad)").toList();
    }

    private static void moved(Hunt hunt, Predicate<Integer> which, List<String> sentences) {
        for (Suspect suspect : hunt.circuit().suspects()) {
            List<Numbered> steps = hunt.counted().stream().filter(event -> which.test(suspect.index())
                    && injected(event).moved().equals(Optional.of(suspect.index()))).toList();
            if (!steps.isEmpty()) {
                sentences.add("The display came and went when " + suspect.name() + " was moved (" + Listing.stepsOf(steps) + ").");
            }
        }
    }

    /** Those with that verdict at the nearest of the points that will do; nearest is what sorts first. */
    private static List<Numbered> at(Hunt hunt, Verdict verdict, Predicate<Integer> points, Comparator<Integer> nearest) {
        List<Numbered> all = hunt.counted().stream().filter(event -> verdict(event) == verdict
                && points.test(injected(event).place().point())).toList();
        return all.stream().map(event -> injected(event).place().point()).min(nearest)
                .map(point -> all.stream().filter(event -> injected(event).place().point() == point).toList())
                .orElse(List.of());
    }

    private static String place(Hunt hunt, List<Numbered> events) {
        return hunt.name(injected(events.get(0)).place());
    }

    private static Entry.Injected injected(Numbered event) {
        return (Entry.Injected) event.entry();
    }

    private static Verdict verdict(Numbered event) {
        return Judgement.of(injected(event)).verdict();
    }
}
