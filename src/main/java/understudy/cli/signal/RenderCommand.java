package understudy.cli.signal;

import java.nio.file.Path;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.audio.SampleFormat;
import understudy.bench.Playback;
import understudy.bench.SignalPlan;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.JsonOption;
import understudy.cli.terminal.Progress;
import understudy.cli.terminal.Surroundings;
import understudy.pattern.Pattern;
import understudy.pattern.Profile;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.view.RenderedText;

/** Writes a signal to a file. */
@Command(
        name = "render",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Writes a pattern's signal to a WAV file.",
        footer = {
            "",
            "Examples:",
            "  understudy render crank-60-2-hall --speed \"3000 rpm\" --out crank.wav",
            "  understudy render sine --speed \"1 kHz\" --for \"2 min\" --bits 16 --out tone.wav",
            "  understudy render sine --profile \"sweep: 9 kHz, for: 9 s\" --out sweep.wav"
        })
public final class RenderCommand extends HouseCommand {

    private static final Range LENGTH = new Range(0.001, 1_000_000, Unit.SECOND);
    private static final double DEFAULT_SECONDS = 10;
    private static final Map<String, SampleFormat> FORMATS = Map.of(
            "16", SampleFormat.PCM16, "24", SampleFormat.PCM24, "32", SampleFormat.PCM32, "float", SampleFormat.FLOAT32);

    @Parameters(paramLabel = "PATTERN", description = "A pattern, by name or file.")
    private String patternName;

    @Mixin
    private SignalOptions options;

    @Option(names = "--for", paramLabel = "TIME", description = "Length, like \"10 s\" or \"2 min\" (default: the profile's, or 10 s).")
    private String length;

    @Option(names = "--bits", paramLabel = "BITS", description = "16, 24, 32 or float (default: 24).")
    private String bits;

    @Option(names = "--out", paramLabel = "FILE", required = true, description = "The file to write (WAV); must be given.")
    private String file;

    @Mixin
    private JsonOption json = new JsonOption();

    public RenderCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        Pattern declared = new Patterns().find(patternName);
        SignalPlan plan = options.read(declared, surroundings, given);
        double seconds = given.quantity("--for", length, LENGTH, defaultSeconds(plan.pattern()));
        SampleFormat format = format(given);
        Path target = given.soundFile("--out", file, "give a name that ends in .wav").orElse(null);
        plan.checkRate(given);
        given.refuse();

        PlanNotes.losses(plan).forEach(surroundings.err()::println);
        long frames = Math.max(1, Math.round(seconds * plan.rateHz()));
        Playback.Rendering rendering = write(plan, format, frames, target);
        RenderedText text = new RenderedText(plan, format, target, rendering, CommandWords.wording());
        json.print(surroundings, text::json, text::lines);
        return ExitCode.FINE;
    }

    private Playback.Rendering write(SignalPlan plan, SampleFormat format, long frames, Path target) {
        try (Progress progress = new Progress(surroundings, "writing " + target)) {
            return Playback.render(plan, format, frames, target, done -> progress.at((double) done / frames));
        }
    }

    private static double defaultSeconds(Pattern pattern) {
        double seconds = pattern.profile().map(Profile::seconds).orElse(DEFAULT_SECONDS);
        return seconds > 0 && seconds <= LENGTH.to() ? seconds : DEFAULT_SECONDS;
    }

    private SampleFormat format(Arguments given) {
        if (bits == null) {
            return SampleFormat.PCM24;
        }
        SampleFormat format = FORMATS.get(bits.strip());
        if (format == null) {
            given.problem("--bits", "\"" + bits + "\" is no sample format", "give 16, 24, 32 or float");
        }
        return format;
    }
}
