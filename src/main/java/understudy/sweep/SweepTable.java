package understudy.sweep;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import understudy.refusal.Control;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refusals;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;
import understudy.refusal.Result;
import understudy.text.Json;
import understudy.text.Problems;
import understudy.text.TextFile;
import understudy.text.WholeFile;
import understudy.trace.Answer;

/**
 * The rows of a sweep, in a file that is a whole table at any moment: a row is on the disk before the next speed is
 * asked for.
 */
public final class SweepTable {

    private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss");

    /** Numbers are written with twelve digits. */
    private static final double DIGITS = 1e-9;

    private final Path file;
    private final SweptCircuit swept;
    private final List<SweepRow> rows = new ArrayList<>();

    private SweepTable(Path file, SweptCircuit swept) {
        this.file = file;
        this.swept = swept;
    }

    /** A new one, without a row; the file is there when this returns. */
    public static SweepTable begin(Path file, SweptCircuit swept) {
        SweepTable log = new SweepTable(file, swept);
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
            log.write(List.of());
        } catch (IOException e) {
            throw new Refused(Refused.Mend.SETUP, List.of(new Refusal(Location.named(file.toString()),
                    "the table of readings can't be written: " + WholeFile.reason(e),
                    Remedy.of("nothing was played; name a file where it can, with ").set(Control.TABLE))), e);
        }
        return log;
    }

    /** One that was begun before, with the same speeds and the same reading. */
    public static SweepTable resume(Path file, SweptCircuit swept, List<SweepStop> steps, Refusals given) {
        SweepTable log = new SweepTable(file, swept);
        Problems problems = new Problems(file.toString());
        Optional<String> text = TextFile.read(file.toString(), problems);
        List<String> lines = given.value(Result.of(text, problems.inOrder())).map(read -> read.lines().toList()).orElse(List.of());
        if (text.isPresent() && (lines.isEmpty() || !lines.get(0).equals(log.header()))) {
            given.add(Control.RESUME, file + " holds no sweep of this circuit and display",
                    Remedy.of("name the file that it was begun with, or leave ").set(Control.RESUME).then(" out"));
            return log;
        }
        for (int i = 1; i < lines.size(); i++) {
            Optional<SweepRow> row = i > steps.size() ? Optional.empty() : log.row(lines.get(i), steps.get(i - 1));
            if (row.isEmpty()) {
                given.add(new Refusal(Location.named(file + ":" + (i + 1)), "this row does not belong to the speeds, or the reading, of this sweep",
                        "give the same as when it was begun"));
                return log;
            }
            log.rows.add(row.get());
        }
        return log;
    }

    public Path file() {
        return file;
    }

    public List<SweepRow> rows() {
        return List.copyOf(rows);
    }

    /** On the disk when this returns; when it throws, nothing has changed. */
    public void add(SweepRow row) throws IOException {
        List<SweepRow> more = new ArrayList<>(rows);
        more.add(row);
        write(more);
        rows.add(row);
    }

    /** Removes the file of a sweep at which nothing was read. */
    public void removeUnused() {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // an empty table is left, which harms nobody
        }
    }

    /** Takes the last one back, to be read again. */
    public void removeLast() throws IOException {
        write(rows.subList(0, rows.size() - 1));
        rows.remove(rows.size() - 1);
    }

    private void write(List<SweepRow> some) throws IOException {
        StringBuilder text = new StringBuilder(header()).append('\n');
        for (int i = 0; i < some.size(); i++) {
            text.append(String.join(",", cells(i + 1, some.get(i)))).append('\n');
        }
        WholeFile.write(text.toString(), file);
    }

    private String header() {
        String unit = " (" + swept.reading().unit().symbol() + ")";
        return "step,time,speed (" + swept.pattern().speed().unit().symbol() + "),frequency (Hz),expected" + unit + ",good from"
                + unit + ",good to" + unit + ",displayed" + unit + ",deviation" + unit + ",deviation (%),verdict";
    }

    private List<String> cells(int step, SweepRow row) {
        return List.of(String.valueOf(step), row.at().toString(), plain(swept.pattern().speed().inUnit(row.speedHz())),
                plain(row.frequencyHz()), plain(row.expected().value()), plain(row.expected().leastShown()),
                plain(row.expected().mostShown()), seen(row), row.deviation().map(SweepTable::plain).orElse(""),
                row.deviationPercent().map(SweepTable::plain).orElse(""), row.verdict());
    }

    private static String seen(SweepRow row) {
        return row.seen().map(answer -> answer.kind() == Answer.Kind.VALUE ? plain(answer.value()) : answer.kind().words())
                .orElse("");
    }

    private static String plain(double number) {
        return Json.number(number).toPlainString();
    }

    /** Empty unless it is the row that this step would make. */
    private Optional<SweepRow> row(String line, SweepStop step) {
        String[] cells = line.split(",", -1);
        try {
            SweepRow row = new SweepRow(Instant.parse(cells[1]), step.speedHz(), swept.frequencyHz(step.speedHz()),
                    swept.expected(step.speedHz()).orElseThrow(), answer(cells[7]));
            boolean same = same(cells[2], swept.pattern().speed().inUnit(row.speedHz())) && same(cells[3], row.frequencyHz())
                    && same(cells[4], row.expected().value()) && same(cells[5], row.expected().leastShown())
                    && same(cells[6], row.expected().mostShown()) && cells[10].equals(row.verdict());
            return Optional.of(row).filter(one -> same);
        } catch (DateTimeParseException | IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
            return Optional.empty();
        }
    }

    private static boolean same(String cell, double number) {
        return Math.abs(Double.parseDouble(cell) - number) <= DIGITS * Math.abs(number);
    }

    private static Optional<Answer> answer(String cell) {
        if (cell.isEmpty()) {
            return Optional.empty();
        }
        for (Answer.Kind kind : new Answer.Kind[] {Answer.Kind.NOTHING, Answer.Kind.ERRATIC}) {
            if (cell.equals(kind.words())) {
                return Optional.of(Answer.of(kind));
            }
        }
        return Optional.of(Answer.value(Double.parseDouble(cell)));
    }

    /** A name among the user's own files that none has yet: circuit and time. */
    public static Path free(Path data, SweptCircuit swept, Clock clock) {
        Path folder = data.resolve("sweeps");
        String name = swept.id() + "-" + STAMP.withZone(clock.getZone()).format(clock.instant());
        Path free = folder.resolve(name + ".csv");
        for (int number = 2; Files.exists(free); number++) {
            free = folder.resolve(name + "-" + number + ".csv");
        }
        return free;
    }
}
