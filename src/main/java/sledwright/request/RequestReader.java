package sledwright.request;

import java.util.Collection;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import sledwright.catalog.CatalogSource;
import sledwright.domain.Catalog;
import sledwright.domain.Discount;
import sledwright.input.Faults;
import sledwright.input.FaultsException;
import sledwright.input.Field;
import sledwright.input.Section;
import sledwright.input.Source;
import sledwright.input.Value.Group;
import sledwright.input.YamlReader;

/** Reads request files. */
public final class RequestReader {

    private RequestReader() {
    }

    /**
     * Reads a request and the catalogue that it is answered from.
     *
     * @param sets    overrides of keys, as {@code path=value}
     * @param catalog the catalogue; empty: the one that the request names
     * @param takes   the kinds that the caller answers
     * @throws FaultsException with every fault of the request, of the overrides and of the catalogue
     */
    public static Job read(Source source, List<String> sets, Optional<CatalogSource> catalog, Collection<Kind> takes) {
        return read(source, sets, catalog, takes, UnaryOperator.identity());
    }

    /**
     * The same where an answer is not of the catalogue as it was read.
     *
     * @param made what is made of the catalogue first: one of another day, or without what must not be offered
     * @throws FaultsException with every fault of the request, of the overrides and of the catalogue
     */
    public static Job read(Source source, List<String> sets, Optional<CatalogSource> catalog, Collection<Kind> takes,
                           UnaryOperator<Catalog> made) {
        Faults faults = new Faults();
        Optional<RequestFile> request = open(source, sets, takes, faults);
        Optional<CatalogSource> from = catalog.or(() -> request.flatMap(read -> named(read, source, faults)));
        Optional<Catalog> parts = from.flatMap(found -> found.read(faults)).map(made);
        Optional<Job> job = request.isPresent() && parts.isPresent()
                ? request.get().resolve(parts.get(), faults).map(Job.class::cast) : Optional.empty();
        faults.throwIfAny();
        return job.orElseThrow();
    }

    private static Optional<CatalogSource> named(RequestFile request, Source source, Faults faults) {
        if (request.catalog().isEmpty()) {
            faults.add(source.place(), "names no catalogue; add \"catalog: FOLDER\" or give --catalog FOLDER");
        }
        return request.catalog().flatMap(named -> named.folder(faults)).map(CatalogSource::of);
    }

    /**
     * Reads a request alone; empty, with faults, when it cannot be read.
     *
     * @param takes the kinds that the caller answers
     */
    public static Optional<RequestFile> open(Source source, List<String> sets, Collection<Kind> takes, Faults faults) {
        Optional<Group> group = YamlReader.read(source, faults).map(read -> Overrides.apply(read, sets, faults));
        if (group.isEmpty()) {
            return Optional.empty();
        }
        Section top = Section.top(group.get(), faults);
        Optional<Kind> kind = kind(top, takes, faults);
        Optional<RequestFile> request = kind.map(known -> read(known, source, top));
        request.ifPresent(read -> top.finish());
        return request;
    }

    /**
     * What a customer pays in the place of the price, of a request of whose other keys nothing is wanted; the price where it cannot be
     * read.
     *
     * @param currency of the price
     */
    public static Discount discount(Source source, List<String> sets, Currency currency) {
        Faults faults = new Faults();
        Optional<Discount> discount = YamlReader.read(source, faults).map(read -> Overrides.apply(read, sets, faults))
                .map(keys -> DiscountFields.read(Section.top(keys, faults)).resolve(currency, faults));
        return discount.filter(known -> faults.all().isEmpty()).orElse(Discount.NONE);
    }

    private static RequestFile read(Kind kind, Source source, Section top) {
        return switch (kind) {
            case QUOTE -> new QuoteFile(source, top);
            case BUILD -> new BuildFile(source, top);
            case UPGRADE -> new UpgradeFile(source, top);
            case ORDER -> new OrderFile(source, top);
            case RESTOCK -> new RestockFile(source, top);
        };
    }

    private static Optional<Kind> kind(Section top, Collection<Kind> takes, Faults faults) {
        if (!top.has("kind")) {
            faults.add(top.place("kind"), "kind is missing; it is one of " + String.join(", ", Kind.WORDS.words()));
            return Optional.empty();
        }
        Optional<Field> field = top.field("kind");
        Optional<Kind> kind = field.flatMap(word -> word.word(Kind.WORDS, faults));
        if (kind.isPresent() && !takes.contains(kind.get())) {
            field.get().fault("must be %s here".formatted(String.join(" or ", Kind.labels(List.copyOf(takes)))), faults);
        }
        return kind;
    }
}
