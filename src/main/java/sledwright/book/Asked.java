package sledwright.book;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import sledwright.catalog.CatalogSource;
import sledwright.domain.Catalog;
import sledwright.input.Source;
import sledwright.request.Job;
import sledwright.request.RequestReader;

/**
 * What a quote answers.
 *
 * @param name    what the request is called that has no name of its own
 * @param request as it was handed in
 * @param sets    keys that were said beside it, as {@code path=value}
 * @param catalog the folder that it is answered from
 */
public record Asked(String name, byte[] request, List<String> sets, Path catalog) {

    public Asked {
        request = request.clone();
        sets = List.copyOf(sets);
    }

    /** The same with further keys, which win over those before, and in place of the catalogue another where one is named. */
    public Asked with(List<String> further, Optional<Path> other) {
        return new Asked(name, request, Stream.concat(sets.stream(), further.stream()).toList(),
                other.map(Path::toAbsolutePath).orElse(catalog));
    }

    /**
     * It once more, resolved against a catalogue.
     *
     * @param called what faults call it
     * @throws sledwright.input.FaultsException when it cannot be read with that catalogue
     */
    Job job(String called, Catalog shop) {
        return RequestReader.read(Source.named(called, name, request), sets, Optional.of(CatalogSource.of(shop)), Answering.KINDS);
    }

    @Override
    public byte[] request() {
        return request.clone();
    }
}
