package sledwright.request;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Catalog;
import sledwright.domain.Request;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Section;

/** A file of kind {@code quote}. */
public final class QuoteFile implements RequestFile {

    private final Draft draft;
    private final List<String> customer;

    private QuoteFile(Draft draft, List<String> customer) {
        this.draft = draft;
        this.customer = customer;
    }

    static QuoteFile read(Path file, Section top) {
        return new QuoteFile(new DraftReader(file, top).quote(), top.oneOrList("customer").stream().map(Field::text).toList());
    }

    @Override
    public Kind kind() {
        return Kind.QUOTE;
    }

    @Override
    public Optional<Path> catalogFolder() {
        return draft.catalogFolder();
    }

    @Override
    public Optional<Job.Quote> resolve(Catalog catalog, Faults faults) {
        int before = faults.size();
        Request request = draft.resolve(catalog, faults);
        return faults.since(before) ? Optional.empty() : Optional.of(new Job.Quote(catalog, request, customer));
    }
}
