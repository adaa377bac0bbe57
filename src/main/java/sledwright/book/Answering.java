package sledwright.book;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import sledwright.desk.Desk;
import sledwright.desk.Reply;
import sledwright.desk.Terms;
import sledwright.desk.view.OfferAnswer;
import sledwright.input.Fault;
import sledwright.input.Faults;
import sledwright.input.FaultsException;
import sledwright.input.Source;
import sledwright.input.YamlReader;
import sledwright.request.Kind;
import sledwright.request.RequestReader;

/** Answers a request in a way that can be kept: with what it was, and the catalogue as it was. */
public final class Answering {

    /** A catalogue that changes again and again while it is read is being written to. */
    private static final int MOST_READINGS = 3;

    /** What can be kept. */
    static final Set<Kind> KINDS = Collections.unmodifiableSet(EnumSet.of(Kind.QUOTE, Kind.ORDER));

    private Answering() {
    }

    /**
     * Answers a request.
     *
     * @param catalog the catalogue's folder; empty: the one that the request names
     * @param stock   what must not be offered, and the day that counts as today
     */
    public static Reply<Answered> answer(Source source, List<String> sets, Optional<Path> catalog, OnDay stock,
                                         Terms terms) {
        Faults faults = new Faults();
        Optional<byte[]> bytes = source.bytes(YamlReader.MOST_MEGABYTES, faults);
        Optional<Path> folder = catalog.or(() -> RequestReader.open(source, sets, KINDS, faults)
                .flatMap(request -> request.catalog()).flatMap(named -> named.folder(faults)));
        if (bytes.isEmpty() || folder.isEmpty()) {
            // The desk finds every fault, of the catalogue as well.
            return Desk.open().by(stock::today).offer(source, sets, terms)
                    .then(answered -> new Reply.Faulty<>(faults.all()));
        }
        return again(source.holding(bytes.get()),
                new Asked(source.plainName(), bytes.get(), sets, folder.get().toAbsolutePath().normalize()), stock, terms);
    }

    /** Answers once more what was asked before; {@code name} is what faults call the request. */
    public static Reply<Answered> again(String name, Asked asked, OnDay stock, Terms terms) {
        return again(Source.named(name, asked.name(), asked.request()), asked, stock, terms);
    }

    private static Reply<Answered> again(Source source, Asked asked, OnDay stock, Terms terms) {
        for (int reading = 0; reading < MOST_READINGS; reading++) {
            String before = digest(asked.catalog());
            Reply<OfferAnswer> reply = Desk.at(asked.catalog()).by(stock::today).offering(stock.reserved()::less)
                    .offer(source, asked.sets(), terms);
            if (!(reply instanceof Reply.Answered<OfferAnswer>) || digest(asked.catalog()).equals(before)) {
                return reply.map(answer -> new Answered(asked, answer, before));
            }
        }
        throw new FaultsException(List.of(new Fault(asked.catalog().toString(), 0, "was changed while it was read; run it again")));
    }

    /** What cannot be read is a fault that the desk words. */
    private static String digest(Path folder) {
        return Files.isDirectory(folder) ? CatalogDigest.of(folder) : "";
    }
}
