package sledwright.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import sledwright.catalog.CatalogSource;
import sledwright.desk.view.QuoteAnswer;
import sledwright.domain.Catalog;
import sledwright.generator.Search;
import sledwright.input.FaultsException;
import sledwright.input.Source;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;

/** The one place where questions are answered. */
public final class Desk {

    private final Optional<CatalogSource> given;
    /** What is known of the catalogue that was given; empty where each question reads its own. */
    private final Optional<Search> known;

    private Desk(Optional<CatalogSource> given, Optional<Search> known) {
        this.given = given;
        this.known = known;
    }

    /** A desk at which every request names the catalogue that it is answered from. */
    public static Desk open() {
        return new Desk(Optional.empty(), Optional.empty());
    }

    /** A desk that answers from one folder, whatever requests name; the folder is read for each question. */
    public static Desk at(Path folder) {
        return new Desk(Optional.of(CatalogSource.of(folder)), Optional.empty());
    }

    /** A desk that answers from one catalogue, whatever requests name, and keeps what it learns of it. */
    public static Desk of(Catalog catalog) {
        return new Desk(Optional.of(CatalogSource.of(catalog)), Optional.of(new Search(catalog)));
    }

    /** Ranked builds for a request of kind {@code quote}, with what explains them. */
    public Reply<QuoteAnswer> quote(Source source, QuoteQuestion asked, Terms terms) {
        return read(source, asked.sets(), Kind.QUOTE, Job.Quote.class).then(job -> Quoting.answer(job, search(job), asked, terms));
    }

    private <J extends Job> Reply<J> read(Source source, List<String> sets, Kind kind, Class<J> type) {
        return sound(() -> type.cast(RequestReader.read(source, sets, given, Set.of(kind))));
    }

    private Search search(Job job) {
        return known.orElseGet(() -> new Search(job.catalog()));
    }

    /** What was read; what is wrong in it becomes a value. */
    static <T> Reply<T> sound(Supplier<T> read) {
        try {
            return new Reply.Answered<>(read.get());
        } catch (FaultsException wrong) {
            return new Reply.Faulty<>(wrong.faults());
        }
    }
}
