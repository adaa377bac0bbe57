package sledwright.desk;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import sledwright.catalog.CatalogReader;
import sledwright.catalog.CatalogSource;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.NewShop;
import sledwright.catalog.PlacedCatalog;
import sledwright.catalog.intake.CatalogImport;
import sledwright.catalog.intake.Change;
import sledwright.catalog.intake.TableExport;
import sledwright.desk.view.CatalogView;
import sledwright.desk.view.DifferenceView;
import sledwright.desk.view.DifferenceView.Answer;
import sledwright.desk.view.DifferenceView.RequestMove;
import sledwright.desk.view.ImportView;
import sledwright.desk.view.QuoteView;
import sledwright.domain.Catalog;
import sledwright.explain.Explanation;
import sledwright.explain.audit.Audit;
import sledwright.generator.Search;
import sledwright.input.Fault;
import sledwright.input.FaultsException;
import sledwright.input.Place;
import sledwright.input.Reason;
import sledwright.input.Source;
import sledwright.planner.Planner;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;

/** Where catalogues themselves are asked about: folders, and what goes into them and comes out. */
public final class CatalogDesk {

    /** The best alone is compared. */
    private static final List<String> BEST_ALONE = List.of("alternatives=1");

    private CatalogDesk() {
    }

    /** What a catalogue holds, and what is odd about it. */
    public static Reply<CatalogView> check(Path folder) {
        return Desk.sound(() -> {
            PlacedCatalog placed = CatalogReader.readPlaced(folder);
            return CatalogView.of(placed.catalog()).with(Audit.of(placed));
        });
    }

    /**
     * Writes a small shop to start from.
     *
     * @param day of its prices
     * @return its files, under the folder, the first request last
     */
    public static Reply<List<String>> begin(Path folder, LocalDate day) {
        try {
            NewShop.write(folder, day);
            return new Reply.Answered<>(NewShop.FILES);
        } catch (FileAlreadyExistsException full) {
            return new Reply.Misasked<>(Misasking.of("%s is not empty; a new shop needs a folder of its own.".formatted(folder)));
        } catch (NotDirectoryException file) {
            return new Reply.Misasked<>(Misasking.of("%s is a file; a new shop needs a folder of its own.".formatted(file.getFile())));
        } catch (IOException failed) {
            return new Reply.Misasked<>(Misasking.of("%s could not be written (%s).".formatted(folder, Reason.of(failed))));
        }
    }

    /** A table of a catalogue for a spreadsheet. */
    public static Reply<TableExport> export(Path folder, CatalogTable table) {
        return Desk.sound(() -> TableExport.of(folder, table));
    }

    /**
     * What a supplier's list adds to a table and changes in it; written where that is asked and nothing is refused, or the rest is to be
     * taken.
     */
    public static Reply<ImportView> importList(Path folder, ImportQuestion asked) {
        return Desk.sound(() -> CatalogImport.of(folder, asked.table(), asked.list(), asked.mapping(), asked.sheet())).then(made -> {
            boolean whole = made.refused().isEmpty() || asked.skipFaulty();
            return asked.apply() && whole && !made.changes().isEmpty() ? applied(made, asked)
                    : new Reply.Answered<>(ImportView.of(asked.list().name(), made, odd(made), false, Optional.empty()));
        });
    }

    /** What is odd about rows that the list adds or changes, as a look at the whole catalogue shows it. */
    private static List<Fault> odd(CatalogImport made) {
        Set<Place> changed = made.changes().stream().map(Change::place).collect(Collectors.toSet());
        return Audit.of(made.made()).stream().filter(warning -> changed.contains(warning.place()))
                .map(warning -> new Fault(warning.place(), warning.message())).toList();
    }

    private static Reply<ImportView> applied(CatalogImport made, ImportQuestion asked) {
        try {
            return new Reply.Answered<>(ImportView.of(asked.list().name(), made, odd(made), true, made.apply().map(Path::toString)));
        } catch (FaultsException changed) {
            return new Reply.Faulty<>(changed.faults());
        } catch (IOException failed) {
            return new Reply.Misasked<>(Misasking.of("%s could not be written (%s); it is as it was.".formatted(
                    made.folder().resolve(made.table().file()), Reason.of(failed))));
        }
    }

    /** What moved between two catalogues, and what that does to the best builds of requests, each answered on these terms. */
    public static Reply<DifferenceView> difference(Path before, Path after, List<Source> requests, Terms terms) {
        return Desk.sound(() -> List.of(CatalogReader.read(before), CatalogReader.read(after))).then(both -> {
            Catalog old = both.get(0);
            Catalog now = both.get(1);
            if (!old.currency().equals(now.currency())) {
                return new Reply.Misasked<>(Misasking.of("amounts of %s are in %s, those of %s in %s; they cannot be compared."
                        .formatted(before, old.currency(), after, now.currency())));
            }
            return Desk.sound(() -> DifferenceView.of(before.toString(), after.toString(), old, now,
                    requests.stream().map(request -> move(request, old, now, terms)).toList()));
        });
    }

    private static RequestMove move(Source request, Catalog old, Catalog now, Terms terms) {
        Job.Quote job = read(request, old);
        return new RequestMove(request.name(), job.request().name(), answer(job, terms), answer(request, now, terms));
    }

    private static Answer answer(Source request, Catalog now, Terms terms) {
        try {
            return answer(read(request, now), terms);
        } catch (FaultsException gone) {
            return Answer.unreadable(gone.faults().stream().map(Fault::toString).toList());
        }
    }

    private static Job.Quote read(Source request, Catalog catalog) {
        // As it stands first: its faults are not to speak of what its writer did not set.
        RequestReader.read(request, List.of(), Optional.of(CatalogSource.of(catalog)), Set.of(Kind.QUOTE));
        return (Job.Quote) RequestReader.read(request, BEST_ALONE, Optional.of(CatalogSource.of(catalog)), Set.of(Kind.QUOTE));
    }

    private static Answer answer(Job.Quote job, Terms terms) {
        return Answer.of(QuoteView.of(new Planner().plan(new Search(job.catalog()).run(job.request(), terms.deadline())),
                job.catalog(), Explanation.NONE));
    }
}
