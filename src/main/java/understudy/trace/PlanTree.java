package understudy.trace;

import java.util.List;
import java.util.Optional;

/**
 * The whole plan of a circuit before anything is injected, with what it takes, beside two ways to go without one.
 *
 * @param root     the first injection, or what is settled without any
 * @param minutes  expected until one suspect is convicted
 * @param right    probability that the convicted one is the bad one
 * @param endToEnd expected minutes from the sensor connector on, point by point
 * @param halving  expected minutes by halving the number of suspects that are left
 */
public record PlanTree(Node root, double minutes, double right, double endToEnd, double halving) {

    /** A branch that is rarer is not drawn. */
    private static final double RARE = 0.01;

    /** A place in the tree. */
    public sealed interface Node {
        /** To come here. */
        double probability();
    }

    /**
     * @param point index into the circuit's points
     * @param good  what follows when it reads good; empty when that can't be
     * @param bad   likewise bad
     */
    public record Inject(double probability, int point, double minutes, Optional<Node> good, Optional<Node> bad)
            implements Node {}

    /** @param certainty that it is one of these */
    public record Convict(double probability, List<Suspect> suspects, double certainty) implements Node {}

    /** Too rare to be drawn, but planned for. */
    public record Rare(double probability) implements Node {}

    /** @throws TraceException never for a circuit that was read */
    public static PlanTree of(Circuit circuit) {
        Task task = Task.of(circuit);
        double[] prior = Task.belief(circuit, Odds.of(circuit.suspects().stream().mapToDouble(Suspect::odds).toArray()));
        Policy planned = Policy.planned(task);
        Forecast forecast = Forecast.of(task, prior, planned);
        return new PlanTree(node(circuit, task, planned, prior, 1, 0), forecast.minutes(), forecast.right(),
                Forecast.of(task, prior, Policy.endToEnd(task)).minutes(),
                Forecast.of(task, prior, Policy.halving(task)).minutes());
    }

    private static Node node(Circuit circuit, Task task, Policy policy, double[] belief, double probability, long key) {
        if (task.settled(belief)) {
            int most = 0;
            for (int group = 1; group < belief.length; group++) {
                most = belief[group] > belief[most] ? group : most;
            }
            return new Convict(probability, circuit.groups().get(most), belief[most]);
        } else if (probability < RARE) {
            return new Rare(probability);
        }
        int cut = policy.choose(belief, key);
        return new Inject(probability, task.points()[cut], task.minutes()[cut],
                branch(circuit, task, policy, belief, probability, key, cut, true),
                branch(circuit, task, policy, belief, probability, key, cut, false));
    }

    private static Optional<Node> branch(Circuit circuit, Task task, Policy policy, double[] belief, double probability,
            long key, int cut, boolean good) {
        double[] after = new double[belief.length];
        double part = task.read(belief, cut, good, after);
        return part > 0
                ? Optional.of(node(circuit, task, policy, after, probability * part, task.key(key, cut, good)))
                : Optional.empty();
    }
}
