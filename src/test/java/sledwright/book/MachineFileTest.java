package sledwright.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.input.Source;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;
import sledwright.rules.Order;

/** A machine that is kept comes back as it was, with its drives, cards and extras. */
class MachineFileTest {

    @ParameterizedTest
    @ValueSource(strings = {"accelerator-node", "file-server", "ledger-database", "small-office-machine", "virtual-machine-host", "hot-mountain-site"})
    void itComesBackAsItWas(String scenario) {
        Job.Quote job = (Job.Quote) RequestReader.read(Source.of(Path.of("scenarios/%s.yaml".formatted(scenario))), List.of(), Optional.empty(),
                List.of(Kind.QUOTE));
        List<Order> found = new Search(job.catalog()).run(job.request(), Deadline.in(Duration.ofSeconds(20))).ranked();
        assertThat(found).isNotEmpty();
        for (Order order : found) {
            order.machines().stream().distinct().forEach(build -> assertThat(MachineFile.read("machine", MachineFile.of(build), job.catalog())).isEqualTo(build));
        }
    }
}
