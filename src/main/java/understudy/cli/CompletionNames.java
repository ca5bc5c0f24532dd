package understudy.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import understudy.cli.terminal.Surroundings;
import understudy.guide.Guide;
import understudy.pattern.PatternLibrary;
import understudy.store.JobLine;
import understudy.store.NamedRig;
import understudy.store.Store;
import understudy.trace.CircuitLibrary;

/** Names that a shell completes: of patterns, circuits, rigs, jobs and pages, by the words that stand before. */
final class CompletionNames {

    private enum Kind { PATTERNS, CIRCUITS, RIGS, JOBS, PAGES, NONE }

    private static final Map<String, Kind> AFTER_OPTION = Map.of("--rig", Kind.RIGS, "--resume", Kind.JOBS, "--pattern", Kind.PATTERNS);
    private static final Map<String, List<Kind>> AFTER_COMMAND = Map.ofEntries(
            Map.entry("play", List.of(Kind.PATTERNS)), Map.entry("render", List.of(Kind.PATTERNS)),
            Map.entry("show", List.of(Kind.PATTERNS)), Map.entry("preflight", List.of(Kind.PATTERNS)),
            Map.entry("cautions", List.of(Kind.PATTERNS)), Map.entry("expect", List.of(Kind.PATTERNS, Kind.CIRCUITS)),
            Map.entry("sweep", List.of(Kind.PATTERNS, Kind.CIRCUITS)), Map.entry("trace", List.of(Kind.CIRCUITS)),
            Map.entry("guide", List.of(Kind.PAGES)), Map.entry("report", List.of(Kind.JOBS)),
            Map.entry("jobs show", List.of(Kind.JOBS)), Map.entry("jobs correct", List.of(Kind.JOBS)),
            Map.entry("jobs export", List.of(Kind.JOBS)), Map.entry("jobs archive", List.of(Kind.JOBS)),
            Map.entry("jobs unarchive", List.of(Kind.JOBS)), Map.entry("jobs remove", List.of(Kind.JOBS)),
            Map.entry("rig show", List.of(Kind.RIGS)), Map.entry("rig edit", List.of(Kind.RIGS)),
            Map.entry("rig remove", List.of(Kind.RIGS)));

    private final Surroundings surroundings;

    CompletionNames(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    /** @param words that stand before the one to be completed, the program's name left out */
    List<String> after(List<String> words) {
        if (words.isEmpty()) {
            return List.of();
        }
        Kind named = AFTER_OPTION.get(words.get(words.size() - 1));
        if (named != null) {
            return names(named);
        }
        boolean grouped = words.get(0).equals("jobs") || words.get(0).equals("rig");
        String command = grouped && words.size() > 1 ? words.get(0) + " " + words.get(1) : words.get(0);
        boolean first = words.size() == (grouped ? 2 : 1);
        return first ? AFTER_COMMAND.getOrDefault(command, List.of(Kind.NONE)).stream().flatMap(kind -> names(kind).stream()).toList()
                : List.of();
    }

    private List<String> names(Kind kind) {
        return switch (kind) {
            case PATTERNS -> PatternLibrary.open().ids();
            case CIRCUITS -> CircuitLibrary.open().ids();
            case RIGS -> kept(store -> store.rigs().all().stream().map(NamedRig::name).toList());
            case JOBS -> kept(store -> store.jobs().list(true).stream().map(JobLine::name).toList());
            case PAGES -> Guide.names();
            case NONE -> new ArrayList<>();
        };
    }

    private List<String> kept(Function<Store, List<String>> names) {
        if (!surroundings.keepsAnything()) {
            return List.of();
        }
        try (Store store = surroundings.store()) {
            return names.apply(store);
        }
    }
}
