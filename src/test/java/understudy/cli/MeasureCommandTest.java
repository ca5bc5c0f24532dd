package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.audio.LoopbackCard;
import understudy.cli.terminal.ExitCode;

/** What {@code measure} says of files whose content is known, and of what the tool itself plays through the virtual card. */
@Tag("real-time")
class MeasureCommandTest {

    private static final int RATE = 48_000;

    @TempDir
    private Path home;

    /** A 16-bit WAV file, written here byte by byte. */
    private Path wav(double seconds, DoubleUnaryOperator... channels) throws IOException {
        int frames = (int) (seconds * RATE);
        int bytes = frames * channels.length * 2;
        ByteBuffer file = ByteBuffer.allocate(44 + bytes).order(ByteOrder.LITTLE_ENDIAN);
        file.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(36 + bytes).put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII))
                .putInt(16).putShort((short) 1).putShort((short) channels.length).putInt(RATE).putInt(RATE * channels.length * 2)
                .putShort((short) (channels.length * 2)).putShort((short) 16)
                .put("data".getBytes(StandardCharsets.US_ASCII)).putInt(bytes);
        for (int i = 0; i < frames; i++) {
            for (DoubleUnaryOperator channel : channels) {
                double value = Math.max(-1, Math.min(1, channel.applyAsDouble((double) i / RATE)));
                file.putShort((short) Math.rint(32767 * value));
            }
        }
        Path path = home.resolve("recording.wav");
        Files.write(path, file.array());
        return path;
    }

    private static DoubleUnaryOperator sine(double peak, double hz) {
        return t -> peak * Math.sin(2 * Math.PI * hz * t);
    }

    private Run.Outcome measure(Object... words) {
        String[] all = new String[words.length + 1];
        all[0] = "measure";
        for (int i = 0; i < words.length; i++) {
            all[i + 1] = words[i].toString();
        }
        return Run.in(home).understudy(all);
    }

    private Map<String, Object> json(Object... words) throws IOException {
        Object[] all = Arrays.copyOf(words, words.length + 1);
        all[words.length] = "--json";
        Run.Outcome run = measure(all);
        assertThat(run.exitCode()).as(run.err()).isZero();
        return JSON.std.mapFrom(run.out());
    }

    @Test
    void aToneInPlainWords() throws IOException {
        Path picture = home.resolve("spectrum.png");
        Run.Outcome run = measure(wav(5, sine(0.5, 997)), "--full-scale", "2 V", "--plot", picture);
        assertThat(run.exitCode()).as(run.err()).isZero();
        // 16 bits without dither: 20 lg(0.5/sqrt 2 x 32767 sqrt 12) = 92.1 dB
        assertThat(run.out().replaceAll("\n(?!\n)", " ")).contains(": 5 s measured of 5 s, channel 1 of 1, 48000 Hz, 16 bits",
                "A tone of 997 Hz, 1 V peak; noise and distortion lie 92.", "Volts take full scale to be 2 V peak",
                "drawn in " + picture);
        assertThat(picture).isNotEmptyFile();
    }

    @Test
    void pulsesInPlainWords() throws IOException {
        // raised-cosine edges of 0.4 ms, 10 ms apart, a period of 20 ms: 10 to 90 % in (acos(-0.8) - acos(0.8))/pi = 0.5903 of it
        Path file = wav(4, t -> {
            double at = t % 0.02;
            double up = Math.min(1, at / 0.0004);
            double down = Math.min(1, Math.max(0, (at - 0.01) / 0.0004));
            return 0.4 * (-Math.cos(Math.PI * up) + Math.cos(Math.PI * down) - 1);
        });
        Map<?, ?> pulses = (Map<?, ?>) json(file, "--full-scale", "1 V").get("pulses");
        assertThat(mean(pulses, "periodSeconds")).isCloseTo(0.02, within(1e-9));
        assertThat(mean(pulses, "highSeconds")).isCloseTo(0.01, within(1e-7));
        assertThat(mean(pulses, "riseSeconds")).isCloseTo(0.5903 * 0.0004, within(1e-6));
        assertThat(((Number) pulses.get("highVolts")).doubleValue()).isCloseTo(0.4, within(1e-4));
        assertThat(measure(file).out()).contains("Pulses (IEC 60469)", "50 Hz tooth rate, steady");
    }

    private static double mean(Map<?, ?> pulses, String name) {
        return ((Number) ((Map<?, ?>) pulses.get(name)).get("mean")).doubleValue();
    }

    @ParameterizedTest
    @CsvSource({"crank-60-2-hall, 3000 rpm, 58, 60", "crank-36-1-vr, 800 rpm, 35, 36", "crank-60-2-vr, 250 rpm, 58, 60"})
    void ourOwnSignalThroughTheVirtualCard(String pattern, String speed, int teeth, int places) throws Exception {
        Map<String, Object> json = heard(pattern, speed, "--pattern", pattern, "--speed", speed);
        Map<?, ?> wheel = (Map<?, ?>) json.get("wheel");
        Map<?, ?> timing = (Map<?, ?>) json.get("timing");
        assertThat(wheel.get("teethPerTurn")).isEqualTo(teeth);
        assertThat(wheel.get("placesPerTurn")).isEqualTo(places);
        double rms = ((Number) timing.get("rmsSeconds")).doubleValue();
        System.out.printf("%s at %s through the virtual card: %s edges, %.4f ns rms, worst %.4f ns%n", pattern, speed,
                timing.get("edges"), rms * 1e9, ((Number) timing.get("worstSeconds")).doubleValue() * 1e9);
        assertThat(rms).isLessThan(1e-9);
        assertThat(timing.get("inverted")).isEqualTo(false);
        // one clock plays and records
        double asked = ((Number) timing.get("askedHz")).doubleValue();
        assertThat(((Number) timing.get("startHz")).doubleValue()).isCloseTo(asked, within(1e-7 * asked));
    }

    @Test
    void ourOwnToneThroughTheVirtualCard() throws Exception {
        Map<?, ?> tone = (Map<?, ?>) heard("sine", "997 Hz").get("tone");
        double sinad = ((Number) tone.get("sinadDb")).doubleValue();
        System.out.printf("sine of 997 Hz through the virtual card: SINAD %.1f dB%n", sinad);
        assertThat(sinad).isGreaterThan(120);
        assertThat(((Number) tone.get("frequencyHz")).doubleValue()).isCloseTo(997, within(1e-3));
    }

    /** A file of 24 bits, as the tool writes it: 20 lg(1/sqrt 2 x 2^23 sqrt 12 / sqrt 2) = 143 dB. */
    @Test
    void ourOwnToneInAFile() throws IOException {
        Path file = home.resolve("tone.wav");
        assertThat(Run.in(home).understudy("render", "sine", "--speed", "997 Hz", "--for", "5 s", "--out", file.toString())
                .exitCode()).isZero();
        double sinad = ((Number) ((Map<?, ?>) json(file).get("tone")).get("sinadDb")).doubleValue();
        System.out.printf("sine of 997 Hz in a file of 24 bits: SINAD %.1f dB%n", sinad);
        assertThat(sinad).isGreaterThan(120);
    }

    /** Plays in one thread, measures in this one once the signal is there. */
    private Map<String, Object> heard(String pattern, String speed, Object... more) throws Exception {
        try (LoopbackCard card = LoopbackCard.start()) {
            Thread playing = new Thread(() -> Run.in(home).understudy("play", pattern, "--speed", speed, "--device",
                    card.output().label(), "--for", "20 s", "--latency", "300 ms", "--yes"));
            playing.setDaemon(true);
            playing.start();
            // loud from its second quarter on: fades and the moment of connection are over
            for (int tries = 0; tries < 20; tries++) {
                Run.Outcome heard = measure("--device", card.input().label(), "--for", "100 ms");
                if (heard.exitCode() == ExitCode.FINE) {
                    break;
                }
            }
            Object[] words = {"--device", card.input().label(), "--for", "3 s"};
            return json(Stream.concat(Stream.of(words), Stream.of(more)).toArray());
        }
    }

    @Test
    void aPatternUpsideDown() throws IOException {
        Path file = home.resolve("reversed.wav");
        assertThat(Run.in(home).understudy("render", "crank-36-1-vr", "--for", "3 s", "--speed", "800 rpm", "--fault",
                "fault: swapped polarity", "--out", file.toString()).exitCode()).isZero();
        assertThat(measure(file, "--pattern", "crank-36-1-vr").out()).contains("the two wires are swapped",
                "It is upside down: polarity is swapped on the way");
    }

    /** What the tool rendered, against the profile that it rendered: a ramp, and an engine that is cranked and catches. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"crank-60-2-hall | ramp: 6000 rpm, from: 500 rpm, for: 4 s",
        "crank-36-1-vr | crank: 180 rpm, for: 4 s, cylinders: 4, ripple: 25 %; ramp: 800 rpm, for: 1 s; hold: 800 rpm, for: 1 s"})
    void edgesFollowTheProfile(String pattern, String profile) throws IOException {
        Path file = home.resolve("profile.wav");
        assertThat(Run.in(home).understudy("render", pattern, "--profile", profile, "--out", file.toString()).exitCode()).isZero();
        Map<?, ?> timing = (Map<?, ?>) json(file, "--pattern", pattern, "--profile", profile).get("timing");
        double rms = ((Number) timing.get("rmsSeconds")).doubleValue();
        System.out.printf("%s, %s: %s edges, %.4f ns rms, worst %.4f ns%n", pattern, profile, timing.get("edges"), rms * 1e9,
                ((Number) timing.get("worstSeconds")).doubleValue() * 1e9);
        assertThat(rms).isLessThan(1e-9);
        assertThat(((Number) timing.get("clockRatio")).doubleValue()).isCloseTo(1, within(1e-9));
        assertThat(measure(file, "--pattern", pattern, "--profile", profile).out()).contains("following the profile");
        assertThat(measure(file, "--pattern", pattern, "--profile", "hold: 800 rpm, for: 9 s").err()).contains("this profile");
    }

    @Test
    void aToneAgainstItsPattern() throws IOException {
        Path file = home.resolve("tone.wav");
        assertThat(Run.in(home).understudy("render", "sine", "--speed", "997 Hz", "--for", "3 s", "--out", file.toString()).exitCode()).isZero();
        Map<?, ?> timing = (Map<?, ?>) json(file, "--pattern", "sine", "--speed", "997 Hz").get("timing");
        // 24 bits of 1.4 V: 5e-8 V rms over 2 pi 997 x 1 V a second is 8 ps
        assertThat(((Number) timing.get("rmsSeconds")).doubleValue()).isLessThan(0.05e-9);
        assertThat(((Number) timing.get("cycleHz")).doubleValue()).isCloseTo(997, within(1e-6));
        assertThat(((Number) timing.get("levelDb")).doubleValue()).isCloseTo(0, within(0.001));
        assertThat(measure(file, "--pattern", "sine", "--speed", "997 Hz").out().replaceAll("\n(?!\n)", " "))
                .contains("crossings of the middle lie", "Its level is 0.00 dB against what is drawn");
    }

    @Test
    void whatIsWrongWithARecordingIsNamed() throws IOException {
        refused("every sample is zero", wav(2, t -> 0));
        refused("other channels have a signal", wav(2, t -> 0, sine(0.5, 997)));
        refused("the recording ends early, after 2.000 s of 3.000 s", null);
        minded("clipped, ", wav(5, sine(1.3, 997)));
        minded("too high, peaks at 99.0 %", wav(5, sine(0.99, 997)));
        minded("too low, peaks at 1.0", wav(5, sine(0.01, 997)));
        minded("mains hum of 50 Hz, 2.00 %", wav(5, t -> sine(0.5, 997).applyAsDouble(t) + sine(0.01, 50.01).applyAsDouble(t)));
    }

    private void refused(String says, Path file) throws IOException {
        Run.Outcome run = file == null ? measure(wav(2, sine(0.5, 997)), "--for", "3 s") : measure(file);
        if (file == null) {
            assertThat(run.out()).contains("Mind: channel 1: " + says);
            return;
        }
        assertThat(run.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.err()).startsWith(file + ": channel 1: ").contains(says);
    }

    private void minded(String says, Path file) {
        Run.Outcome run = measure(file);
        assertThat(run.exitCode()).isZero();
        assertThat(run.out().replaceAll("\n +", " ")).contains("\nMind: channel 1: " + says);
    }

    @Test
    void wrongInput() throws IOException {
        Path file = wav(1, sine(0.5, 997));
        bad("measure: there is nothing to measure; give a file");
        bad("--device: it does not go together with a file", file, "--device", "x");
        bad("--device: no audio input named \"none\"", "--device", "none");
        bad("--channel: \"0\" will not do; give a whole number from 1 to 64", file, "--channel", "0");
        bad("--channel: " + file + " has 1 channel, so there is no channel 2; give a number from 1 to 1", file, "--channel", "2");
        bad("--speed: without a pattern", file, "--speed", "800 rpm");
        bad("--output: the pattern has no output \"cam\"; it has crank", file, "--pattern", "crank-36-1-vr", "--output", "cam");
        bad("--plot: \"a.txt\" is no name for a picture", file, "--plot", "a.txt");
        bad("--full-scale: \"2 ohm\" is a resistance", file, "--full-scale", "2 ohm");
        bad(home.resolve("gone.wav") + ": there is no such file", home.resolve("gone.wav"));
        bad("--profile: without a pattern", file, "--profile", "hold: 800 rpm, for: 2 s");
        bad("--profile:1:7: \"800 ohm\" is a resistance", file, "--pattern", "crank-60-2-hall", "--profile", "hold: 800 ohm, for: 2 s");
        bad(file + ": channel 1: output knock of knock-86mm has neither teeth nor a plain shape", file, "--pattern", "knock-86mm", "--output", "knock");
        bad(file + ": channel 1: edge ", file, "--pattern", "crank-60-2-hall");
    }

    private void bad(String begin, Object... words) {
        Run.Outcome run = measure(words);
        assertThat(run.exitCode()).as(run.out() + run.err()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.err()).startsWith(begin);
    }
}
