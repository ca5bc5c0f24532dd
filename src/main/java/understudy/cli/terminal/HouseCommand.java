package understudy.cli.terminal;

import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;

/** What every command has: its surroundings, and help. */
public abstract class HouseCommand implements Callable<Integer> {

    public final Surroundings surroundings;

    @Mixin
    private HelpOption help;

    public HouseCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }
}
