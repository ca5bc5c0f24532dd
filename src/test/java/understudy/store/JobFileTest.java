package understudy.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;
import understudy.text.WholeFile;
import understudy.trace.Job;

/** Whatever a job holds comes back from the store and from its file as it was. */
class JobFileTest {

    private static Path folder;

    @BeforeContainer
    static void makeFolder() throws IOException {
        folder = Files.createTempDirectory("jobs");
    }

    @AfterContainer
    static void removeFolder() throws IOException {
        try (var paths = Files.walk(folder)) {
            for (Path path : paths.sorted(java.util.Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }

    @Property(tries = 60)
    void throughStoreAndFileAndStore(@ForAll long seed, @ForAll String vehicle, @ForAll @Size(max = 200) String complaint)
            throws IOException {
        Job sample = JobSamples.random("job", seed, 50).job();
        Job job = new Job("job", sample.begun(), whole(vehicle), whole(complaint), sample.who(), sample.suspect(), sample.reference(),
                sample.equipment(), List.of());
        for (Job.Event event : sample.events()) {
            job = job.with(event.at(), event.entry());
        }
        Path file = folder.resolve("job.json");
        try (Store store = Store.open(folder.resolve("first.db")); Store other = Store.open(folder.resolve("second.db"))) {
            store.jobs().begin(job);
            WholeFile.write(JobFile.text(store.jobs().find("job")), file);
            other.jobs().begin(JobFile.read(file.toString(), Optional.empty()));
            assertThat(other.jobs().find("job")).isEqualTo(job);
            assertThat(other.jobs().line("job")).isEqualTo(store.jobs().line("job"));
            store.jobs().remove("job");
            other.jobs().remove("job");
        }
    }

    /** Half of a surrogate pair is no letter, and has no UTF-8. */
    private static String whole(String text) {
        return new String(text.getBytes(java.nio.charset.StandardCharsets.UTF_8), java.nio.charset.StandardCharsets.UTF_8);
    }
}
