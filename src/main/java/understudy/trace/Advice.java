package understudy.trace;
import java.util.Optional;
record Advice(int point, String reason) { static Optional<Advice> next(Circuit c, Odds o) { return Optional.empty(); } }
