package understudy.audio;

import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import understudy.rig.OutputScale;
import understudy.wave.VoltSource;

/**
 * Measures the player on the virtual card: how long a change takes to get there, and whether it ever runs dry.
 *
 * <pre>scripts/sound-card java -cp target/classes:target/test-classes understudy.audio.PlayBench latency 1000
 * scripts/sound-card java -cp target/classes:target/test-classes understudy.audio.PlayBench underruns 600</pre>
 */
final class PlayBench {

    private static final OutputScale ONE_VOLT = new OutputScale(1, true);

    private PlayBench() {}

    public static void main(String[] args) throws IOException, InterruptedException {
        Duration fill = args.length > 2 ? Duration.ofMillis(Long.parseLong(args[2])) : PlayerSettings.DEFAULT_TARGET_FILL;
        try (LoopbackCard card = LoopbackCard.start()) {
            if (args[0].equals("latency")) {
                double[] millis = beyondTargetMillis(card, fill, Integer.parseInt(args[1]));
                System.out.printf(Locale.ROOT, "target fill %d ms and, in %d changes: median %+.1f ms, 99th percentile %+.1f ms, longest %+.1f ms%n",
                        fill.toMillis(), millis.length, quantile(millis, 0.5), quantile(millis, 0.99), quantile(millis, 1));
            } else {
                System.out.println(withOtherCoreBusy(card, fill, Duration.ofSeconds(Long.parseLong(args[1]))));
            }
        }
    }

    static double quantile(double[] values, double part) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[(int) Math.min(sorted.length - 1, Math.ceil(part * sorted.length) - 1)];
    }

    /** A level that a "key" flips, and the time until the first sample at the new level comes out of the card's
     * monitor, less the target fill, which an underrun raises. */
    static double[] beyondTargetMillis(LoopbackCard card, Duration fill, int changes) throws IOException, InterruptedException {
        var flipped = new Object() {
            volatile boolean now;
        };
        VoltSource level = Sources.of(1, 48000, (c, n) -> flipped.now ? 0.5 : 0.25);
        double[] millis = new double[changes];
        // At 1 ms the listener itself adds next to nothing; what it adds counts against us.
        Process listener = new ProcessBuilder("parec", "--raw", "--format=s16le", "--rate=48000", "--channels=2",
                "--latency-msec=1", "--process-time-msec=1", "--device=bench.monitor").redirectError(ProcessBuilder.Redirect.DISCARD).start();
        try (Player player = Player.open(level, level, ONE_VOLT, card.choice(1), PlayerSettings.DEFAULT.withTargetFill(fill));
                InputStream heard = listener.getInputStream()) {
            player.start();
            awaitLevel(heard, false);
            var random = new Random(1);
            for (int i = 0; i < changes; i++) {
                // Anywhere within the device's steps of up to 20 ms.
                long settled = System.nanoTime() + 100_000_000 + random.nextInt(40_000_000);
                while (System.nanoTime() < settled) {
                    heard.skip(heard.available());
                    Thread.sleep(1);
                }
                double targetMillis = player.status().targetMillis();
                long key = System.nanoTime();
                boolean to = !flipped.now;
                flipped.now = to;
                awaitLevel(heard, to);
                millis[i] = (System.nanoTime() - key) / 1e6 - targetMillis;
            }
            player.stop();
            PlayerReport report = player.awaitEnd();
            System.out.println(report.underrunCount() + " underruns, last target fill " + report.targetEndMillis() + " ms");
        } finally {
            listener.destroy();
        }
        return millis;
    }

    /** Reads until a sample of channel 1 is nearer to the level wanted than to the other one. */
    private static void awaitLevel(InputStream heard, boolean flipped) throws IOException {
        byte[] frame = new byte[4];
        while (true) {
            if (heard.readNBytes(frame, 0, 4) < 4) {
                throw new IOException("the card fell silent");
            }
            int value = (short) (frame[0] & 0xFF | frame[1] << 8);
            if (value > 0x1800 && value > 0x3000 == flipped) {
                return;
            }
        }
    }

    static PlayerReport withOtherCoreBusy(LoopbackCard card, Duration fill, Duration length) throws IOException, InterruptedException {
        Process busy = new ProcessBuilder("setsid", "sh", "-c", "while :; do :; done").start(); // A program of its own.
        try (Player player = Player.open(Sources.sine(1, 48000, 1000, 0.5), Sources.sine(1, 48000, 1000, 0.5), ONE_VOLT, card.choice(1),
                PlayerSettings.DEFAULT.withTargetFill(fill).withDuration(length))) {
            player.start();
            return player.awaitEnd();
        } finally {
            busy.destroy();
        }
    }
}
