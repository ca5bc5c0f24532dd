package understudy.reading;
import java.util.Optional;
public final class ReadingReader { public static Optional<Reading> read(org.snakeyaml.engine.v2.nodes.Node n, understudy.text.Problems p) { return Optional.empty(); } }
