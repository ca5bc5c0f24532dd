package understudy.view;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import understudy.audio.SampleFormat;
import understudy.audio.WavRender;
import understudy.bench.Hookup;
import understudy.bench.Playback;
import understudy.bench.SignalPlan;
import understudy.pattern.Output;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;
import understudy.text.Json;

/**
 * What was written to a sound file.
 *
 * @param plan   of the signal
 * @param format of a sample
 * @param target the file
 */
public record RenderedText(SignalPlan plan, SampleFormat format, Path target, Playback.Rendering rendering, Wording wording) {

    private record Written(String file, String pattern, long frames, int rateHz, int bits, boolean float_, int channels,
            Optional<Double> fullScaleVolts, boolean calibrated, List<Channel> outputs, double peakOfFullScale, long clippedSamples) {}

    private record Channel(String output, double fullScaleVolts, Optional<String> rig, Optional<String> input, boolean calibrated) {}

    public List<String> lines() {
        WavRender.Summary summary = rendering.summary();
        int channels = plan.channels().channels();
        List<String> lines = new ArrayList<>(List.of(target + ": " + new Quantity((double) summary.frames() / plan.rateHz(), Unit.SECOND).rounded(6)
                + " of " + plan.pattern().id() + ", " + plan.rateHz() + " Hz, "
                + (format == SampleFormat.FLOAT32 ? "32 bits float" : format.bits() + " bits") + ", "
                + channels + (channels == 1 ? " channel" : " channels")));
        plan.voltsNote().lines().forEach(lines::add);
        if (summary.clippedSamples() > 0) {
            lines.add(Remedy.of(summary.clippedSamples() + " samples were cut off at full scale, by faults that add to the signal; ")
                    .set(Control.FIT).then(" leaves them room").text(wording));
        }
        rendering.shortage().map(shortage -> shortage.text(wording)).ifPresent(lines::add);
        return lines;
    }

    /** For scripts; one full scale for all only where they share it. */
    public Object json() {
        WavRender.Summary summary = rendering.summary();
        List<Channel> outputs = plan.played().stream().map(this::channel).toList();
        boolean shared = outputs.stream().map(channel -> Json.number(channel.fullScaleVolts())).distinct().count() == 1;
        return new Written(target.toString(), plan.pattern().id(), summary.frames(), plan.rateHz(), format.bytes() * 8,
                format == SampleFormat.FLOAT32, plan.channels().channels(), shared ? Optional.of(outputs.get(0).fullScaleVolts()) : Optional.empty(),
                outputs.stream().allMatch(Channel::calibrated), outputs, summary.peakOfFullScale(), summary.clippedSamples());
    }

    /** Of the pattern's volts, so many become full scale. */
    private Channel channel(Output output) {
        Optional<Hookup> hookup = plan.hookups().of(output);
        return new Channel(output.name(), plan.fullScaleVolts(output) / plan.level(), hookup.map(known -> known.rig().name()),
                hookup.map(known -> known.input().kind().label()), hookup.map(Hookup::calibrated).orElse(false));
    }
}
