package understudy.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;

/** What every command has: its surroundings, and help. */
abstract class HouseCommand implements Callable<Integer> {

    final Surroundings surroundings;

    @Mixin
    private HelpOption help;

    HouseCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }
}
