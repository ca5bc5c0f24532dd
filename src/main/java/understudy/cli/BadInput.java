package understudy.cli;

import java.util.List;

/** What the user gave cannot be used; each problem says where, what was given, what is allowed and what to do. Exit code 2. */
final class BadInput extends RuntimeException {

    private final List<String> problems;

    BadInput(List<String> problems) {
        super(String.join("\n", problems));
        this.problems = List.copyOf(problems);
    }

    BadInput(String problem) {
        this(List.of(problem));
    }

    List<String> problems() {
        return problems;
    }
}
