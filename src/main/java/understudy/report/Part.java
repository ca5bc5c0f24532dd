package understudy.report;

import java.util.List;
import java.util.Optional;

/** A piece of a report's section. */
sealed interface Part {

    record Sentence(String words) implements Part {}

    record Bullets(List<String> lines) implements Part {}

    /** What is asked, and what holds. */
    record Fact(String name, String value) {}

    record Facts(List<Fact> facts) implements Part {}

    record Drawing(CircuitDrawing drawing) implements Part {}

    /** Things to prove. @param how it was found, if it was */
    record Tick(String demand, Optional<String> how) {}

    record Ticks(List<Tick> ticks) implements Part {}

    record Injections(List<InjectionRow> rows) implements Part {}
}
