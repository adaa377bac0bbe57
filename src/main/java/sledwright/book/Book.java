package sledwright.book;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import sledwright.book.BookRefusal.Kind;
import sledwright.book.store.BookPlace;
import sledwright.book.store.Database;
import sledwright.book.store.Sql;
import sledwright.book.store.Work;
import sledwright.desk.Terms;
import sledwright.desk.view.KeptAs;
import sledwright.domain.Catalog;
import sledwright.input.FaultsException;
import sledwright.request.CustomerName;

/** The quotes of a shop and what became of them. Threads may share one. */
public final class Book implements AutoCloseable {

    private final Database database;
    private final String program;
    private final Saving saving;

    private Book(Database database, String program) {
        this.database = database;
        this.program = program;
        saving = new Saving(database, program);
    }

    /**
     * Opens a book, and makes it where there is none.
     *
     * @param program the version of this program, which each quote keeps
     * @throws FaultsException when it cannot be opened
     */
    public static Book open(BookPlace place, String program) {
        return new Book(Database.open(place), program);
    }

    /** Keeps an answer as a new quote. */
    public SavedQuote save(Answered answered, Papers papers, String customer, String note, Signature by) {
        return saving.save(answered, papers, customer, note, "", by);
    }

    SavedQuote save(NewVersion fresh, String customer, String note, Signature by) {
        return saving.save(fresh, customer, note, by);
    }

    /** Keeps an answer as a new quote like another; what was noted of a customer is said of nobody else. */
    public SavedQuote copy(SavedQuote from, Answered answered, Papers papers, String customer, Signature by) {
        String note = from.customer().equals(CustomerName.of(customer)) ? from.note() : "";
        return saving.save(answered, papers, customer, note, "like " + from.number(), by);
    }

    /**
     * Keeps an answer as the next version of a quote.
     *
     * @param from the quote as it was when the answer was asked for
     */
    public SavedQuote revise(SavedQuote from, Answered answered, Papers papers, Signature by) {
        KeptAs next = new KeptAs(from.number().toString(), from.offered().version() + 1);
        return revise(from, NewVersion.of(Addressing.of(answered, from.customer()), papers, next), by);
    }

    SavedQuote revise(SavedQuote from, NewVersion fresh, Signature by) {
        return database.write(sql -> {
            SavedQuote now = locked(sql, from.number(), by);
            next(sql, now, QuoteStep.REVISE, by);
            now.requireNoneAfter(from.offered().version());
            int version = now.offered().version() + 1;
            Quotes.insertVersion(sql, now.number(), version, fresh, program, by);
            Quotes.revise(sql, now, version, fresh);
            Quotes.note(sql, now.number(), version, QuoteStep.REVISE.label(), "", by);
            return known(sql, now.number(), by);
        });
    }

    /**
     * Takes a quote one step further. Where it is accepted, or sent while its parts are held, its parts are kept for it alone: what is
     * held for it as it stands until the day that was said, otherwise until its own last day.
     *
     * @param choice  which of its options it is about from now on; empty: the same as before
     * @param hold    whether its parts are to be held where it is sent
     * @param catalog what the shop has today, read before; nothing is read while others wait
     * @param reason  why; where empty, what was said before stays, but of what is lost
     * @throws BookRefusal when it does not take that step, or someone was first to take its parts
     */
    SavedQuote step(QuoteNumber number, QuoteStep step, Optional<Integer> choice, boolean hold, Optional<Catalog> catalog, String reason,
                    Signature by) {
        return database.write(sql -> stepped(sql, number, step, choice, hold, catalog, reason, by));
    }

    /**
     * Notes that a customer does not take a quote.
     *
     * @param choice   which of its options it was about; empty: the same as before
     * @param wouldPay what all its machines would have been taken for; empty: nobody said
     */
    public SavedQuote decline(QuoteNumber number, Optional<Integer> choice, Optional<BigDecimal> wouldPay, String reason, Signature by) {
        return database.write(sql -> {
            SavedQuote declined = stepped(sql, number, QuoteStep.DECLINE, choice, false, Optional.empty(), reason, by);
            if (wouldPay.isPresent()) {
                String currency = declined.offered().currency();
                Quotes.requireWholeCoins(wouldPay.get(), currency);
                sql.change("UPDATE quote SET would_pay = ? WHERE number = ?", Quotes.minor(wouldPay.get(), currency), number);
            }
            return declined;
        });
    }

    private static SavedQuote stepped(Sql sql, QuoteNumber number, QuoteStep step, Optional<Integer> choice, boolean hold,
                                      Optional<Catalog> catalog, String reason, Signature by) throws SQLException {
        SavedQuote now = locked(sql, number, by);
        QuoteState to = next(sql, now, step, by);
        int chosen = Quotes.chosen(sql, now, step, choice);
        if (step == QuoteStep.SEND && now.days().validUntil().filter(until -> until.isBefore(by.today())).isPresent()) {
            throw new BookRefusal(Kind.STEP, "%s held until %s; revise it, which answers it again"
                    .formatted(number, now.days().validUntil().get()));
        }
        keep(sql, now, step, chosen, hold, catalog, by);
        String why = reason.isEmpty() && to != QuoteState.DECLINED && to != QuoteState.WITHDRAWN ? now.reason() : reason;
        sql.change("UPDATE quote SET state = ?, chosen = ?, reason = ? WHERE number = ?", to.label(), chosen, why, number);
        if (step == QuoteStep.SEND) {
            sql.change("UPDATE quote_version SET sent_on = ? WHERE number = ? AND version = ?", by.today(), number,
                    now.offered().version());
        }
        SavedQuote then = known(sql, number, by);
        String held = step != QuoteStep.SEND ? "" : then.days().heldUntil().map("held until %s"::formatted).orElse("");
        String option = chosen == now.offered().chosen() ? "" : "option " + chosen + (held.isEmpty() ? "" : ", ");
        Quotes.note(sql, number, now.offered().version(), step.label(), option + held, by);
        return then;
    }

    private static void keep(Sql sql, SavedQuote now, QuoteStep step, int chosen, boolean hold, Optional<Catalog> catalog, Signature by)
            throws SQLException {
        switch (step) {
            case SEND -> {
                if (hold || now.days().heldUntil().isPresent() && !Holdings.holds(sql, now, chosen, by.today())) {
                    LocalDate last = until(now, now.days().validUntil().or(() -> now.days().heldUntil()));
                    take(sql, now, chosen, catalog.orElseThrow(), Optional.of(last), by);
                }
            }
            case ACCEPT -> {
                if (Holdings.holds(sql, now, chosen, Quotes.latest(sql, by.today()))) {
                    // What was held for the customer is promised now, whatever has become of the lots; others had it since a hold was over.
                    Holdings.promise(sql, now.number());
                } else {
                    take(sql, now, chosen, catalog.orElseThrow(), Optional.empty(), by);
                }
            }
            case PICK -> {
                Applying.requireKept(sql, now);
                Holdings.pick(sql, now.number(), by.today());
            }
            case DECLINE, WITHDRAW -> Holdings.release(sql, now.number());
            default -> { }
        }
    }

    private static void take(Sql sql, SavedQuote now, int option, Catalog catalog, Optional<LocalDate> until, Signature by)
            throws SQLException {
        List<Gone> gone = Holdings.take(sql, now, option, catalog, until, by.today());
        if (!gone.isEmpty()) {
            throw BookRefusal.taken(now.number(), gone);
        }
    }

    private static LocalDate until(SavedQuote now, Optional<LocalDate> asked) {
        LocalDate until = asked.or(() -> now.days().validUntil()).orElseThrow(() -> new BookRefusal(Kind.VALUE,
                "%s names no last day, so say until when its parts are held: --until DAY".formatted(now.number())));
        if (now.days().validUntil().isPresent() && until.isAfter(now.days().validUntil().get())) {
            throw new BookRefusal(Kind.VALUE, "%s holds until %s, and its parts no longer".formatted(now.number(),
                    now.days().validUntil().get()));
        }
        return until;
    }

    /**
     * Holds what a quote takes, lot by lot.
     *
     * @param choice  which of its options it is about from now on; empty: the same as before
     * @param until   the last day; empty: that of the quote
     * @param catalog what the shop has today, read before
     * @throws BookRefusal when someone was first
     */
    SavedQuote hold(QuoteNumber number, Optional<Integer> choice, Optional<LocalDate> until, Catalog catalog, Signature by) {
        return database.write(sql -> {
            SavedQuote now = locked(sql, number, by);
            if (!now.state().isOpen()) {
                throw new BookRefusal(Kind.STEP, "%s is %s; only a draft and what was sent is held".formatted(number, now.state().label()));
            }
            Quotes.requireInTime(sql, number, "hold", by);
            LocalDate last = until(now, until);
            if (last.isBefore(by.today())) {
                throw new BookRefusal(Kind.VALUE, "%s is over; parts are held until a day to come".formatted(last));
            }
            int chosen = Quotes.chosen(sql, now, QuoteStep.SEND, choice);
            take(sql, now, chosen, catalog, Optional.of(last), by);
            sql.change("UPDATE quote SET chosen = ? WHERE number = ?", chosen, number);
            String option = chosen == now.offered().chosen() ? "" : "option %s, ".formatted(chosen);
            Quotes.note(sql, number, now.offered().version(), "hold", option + "until " + last, by);
            return known(sql, number, by);
        });
    }

    /** Gives back what a quote holds. */
    public SavedQuote release(QuoteNumber number, Signature by) {
        return database.write(sql -> {
            SavedQuote now = locked(sql, number, by);
            if (now.days().heldUntil().isEmpty()) {
                throw new BookRefusal(Kind.STEP, "%s holds nothing that could be given back".formatted(number));
            }
            Quotes.requireInTime(sql, number, "release", by);
            Holdings.release(sql, number);
            Quotes.note(sql, number, now.offered().version(), "release", "", by);
            return known(sql, number, by);
        });
    }

    /**
     * What must not be offered.
     *
     * @param but a quote that may be offered what it keeps itself
     */
    public Reserved reserved(Optional<QuoteNumber> but, Signature by) {
        return database.read(sql -> Holdings.reserved(sql, by.today(), but));
    }

    private static QuoteState next(Sql sql, SavedQuote now, QuoteStep step, Signature by) throws SQLException {
        QuoteState to = step.from(now.state()).orElseThrow(() -> new BookRefusal(Kind.STEP, "%s is %s; %s takes a quote that is %s"
                .formatted(now.number(), now.state().label(), step.label(),
                step.starts().stream().map(QuoteState::label).collect(Collectors.joining(" or ")))));
        Quotes.requireInTime(sql, now.number(), step.label(), by);
        return to;
    }

    /** The quote with that number, as it was seen. */
    public SavedQuote find(QuoteNumber number, Signature by) {
        return by.seen(database.read(sql -> known(sql, number, by)));
    }

    /** Quotes by their numbers. */
    public List<SavedQuote> find(BookSearch search, Signature by) {
        return database.read(sql -> Quotes.find(sql, search, by.today()));
    }

    /** What the last version of a quote answers. */
    public Asked asked(SavedQuote quote) {
        Asked asked = database.read(sql -> Quotes.asked(sql, quote.number(), quote.offered().version()).orElseThrow());
        if (asked.request().length == 0) {
            throw new BookRefusal(Kind.UNKNOWN, "%s has no request any more, for its customer was erased".formatted(quote.number()));
        }
        return asked;
    }

    /** A document of a version, every byte as it was saved. */
    public byte[] paper(SavedQuote quote, int version, String kind) {
        quote.requireVersion(version);
        return database.read(sql -> {
            Optional<byte[]> paper = Quotes.paper(sql, quote.number(), version, kind);
            return paper.isPresent() ? paper.get() : Quotes.noPaper(sql, quote.number(), version, kind);
        });
    }

    /** Whether a quote is of several lines that draw on one stock. */
    public boolean isOrder(SavedQuote quote) {
        return database.read(sql -> Quotes.paper(sql, quote.number(), quote.offered().version(), KeptMachines.PAPER)).isPresent();
    }

    /** Everything that was done with a quote, the first first. */
    public List<HistoryEntry> history(QuoteNumber number, Signature by) {
        return database.read(sql -> Quotes.history(sql, known(sql, number, by).number()));
    }

    /** Everything that was ever done, the first first. */
    public List<HistoryEntry> history() {
        return database.read(Quotes::history);
    }

    /**
     * What an answer of today is given from.
     *
     * @param but a quote that may be offered what it keeps itself
     */
    public OnDay stock(Optional<QuoteNumber> but, Signature by) {
        return new OnDay(reserved(but, by), by.today());
    }

    /**
     * Every open quote against today's catalogue; goes on where an earlier review of the day was broken off.
     *
     * @param catalog the folder
     * @param again   whether what was worked out today is forgotten first
     * @param terms   the time is for each quote; the listener hears how far it is
     */
    public List<Reviewed> review(Path catalog, boolean again, Signature by, Terms terms) {
        return new Review(database, catalog, by, terms).make(again);
    }

    /**
     * Draws everything that is accepted and not yet picked anew from today's stock; nothing is written.
     *
     * @param catalog the folder
     * @param terms   the time is for all together
     */
    public Allocated allocate(Path catalog, Signature by, Terms terms) {
        return new Allocating(database, catalog, by, terms).make();
    }

    /**
     * Keeps for every promise what it was given.
     *
     * @param catalog the folder that it was drawn from
     * @return how many quotes keep something else than before
     * @throws BookRefusal when the book or the catalogue has changed since; nothing is changed then
     */
    public int apply(Allocated allocated, Path catalog, Signature by) {
        if (!CatalogDigest.of(catalog).equals(allocated.basis().digest())) {
            throw new BookRefusal(Kind.TAKEN, "the catalogue has changed since stock was drawn; nothing was changed. Allocate again");
        }
        return database.write(sql -> Applying.apply(sql, allocated, by));
    }

    /**
     * What was asked for, offered and bought in the months up to today.
     *
     * @param catalog the folder that requests are read with
     */
    public PastDemand demand(Path catalog, int months, Signature by) {
        return new Demanding(catalog, by.today(), months).of(database.read(sql -> Demanding.rows(sql, by.today(), months)));
    }

    /** All that the book has of a customer, who is named in full. */
    public CustomerFile export(String customer, Signature by) {
        return database.read(sql -> {
            List<CustomerFile.Kept> kept = new ArrayList<>();
            for (SavedQuote quote : Erasure.quotes(sql, customer, by)) {
                List<String> requests = new ArrayList<>();
                for (int version = 1; version <= quote.offered().version(); version++) {
                    requests.add(new String(Quotes.asked(sql, quote.number(), version).orElseThrow().request(), StandardCharsets.UTF_8));
                }
                kept.add(new CustomerFile.Kept(quote, Quotes.history(sql, quote.number()), requests));
            }
            return new CustomerFile(customer, kept, CustomerLinks.of(sql, customer));
        });
    }

    /** Takes a customer out of the book, keeping figures; returns what was theirs. */
    public Erased erase(String customer, Signature by) {
        Erased erased = database.write(sql -> Erasure.erase(sql, customer, by));
        database.compact();
        return erased;
    }

    /** The customers' links. */
    public CustomerLinks links() {
        return new CustomerLinks(database);
    }

    /** A whole copy, while others write. */
    public void backup(Path target) {
        database.backup(target);
    }

    <T> T rows(Work<T> work) {
        return database.write(work);
    }

    /** Nobody else changes the quote until the transaction ends, nor has changed it since it was seen. */
    private static SavedQuote locked(Sql sql, QuoteNumber number, Signature by) throws SQLException {
        sql.change("UPDATE quote SET state = state WHERE number = ?", number);
        return by.seen(known(sql, number, by));
    }

    private static SavedQuote known(Sql sql, QuoteNumber number, Signature by) throws SQLException {
        return Quotes.find(sql, number, by.today()).orElseThrow(() -> new BookRefusal(Kind.UNKNOWN, "there is no quote %s in the book"
                .formatted(number)));
    }

    @Override
    public void close() {
        database.close();
    }
}
