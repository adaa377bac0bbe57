package sledwright.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static sledwright.book.Shelf.ANNA;
import static sledwright.book.Shelf.DAY;
import static sledwright.book.Shelf.Found.NODE;
import static sledwright.book.Shelf.Found.NOTHING;
import static sledwright.book.Shelf.Found.ORDER;
import static sledwright.book.Shelf.KEPT;
import static sledwright.book.Shelf.PAPERS;
import static sledwright.book.Shelf.on;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.book.store.BookPlace;
import sledwright.catalog.CatalogReader;
import sledwright.desk.Terms;
import sledwright.desk.view.KeptAs;
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.QuoteAnswer;
import sledwright.domain.Catalog;
import sledwright.planner.allot.LotName;
import sledwright.samples.Folders;

/** What a book does, wherever it is. */
abstract class BookTest {

    private static final Catalog SHOP_TODAY = CatalogReader.read(Shelf.SHOP);

    @TempDir
    Path folder;

    Book book;

    /** Where nothing is yet. */
    abstract BookPlace place();

    @BeforeEach
    void open() {
        book = Book.open(place(), "0.1");
    }

    @AfterEach
    void close() {
        book.close();
    }

    SavedQuote save(String customer) {
        return book.save(NODE, KEPT, customer, "", ANNA);
    }

    SavedQuote step(SavedQuote quote, QuoteStep step) {
        return step(quote, step, Optional.empty(), ANNA);
    }

    private SavedQuote step(SavedQuote quote, QuoteStep step, Optional<Integer> choice, Signature by) {
        return book.step(quote.number(), step, choice, false, Optional.of(SHOP_TODAY), "", by);
    }

    @Test
    void numbersHaveNoGapsAndBeginAnewEachYear() {
        List<String> numbers = new ArrayList<>();
        for (LocalDate day : List.of(DAY, DAY, DAY.plusYears(1), DAY, DAY.plusYears(1))) {
            numbers.add(book.save(NODE, KEPT, "Nordmole", "", on(day)).number().toString());
        }
        assertThat(numbers).containsExactly("2026-0001", "2026-0002", "2027-0001", "2026-0003", "2027-0002");
        assertThat(QuoteNumber.named("2026-12345")).contains(new QuoteNumber(2026, 12345));
        assertThat(QuoteNumber.named("2026-1")).isEmpty();
    }

    /** What came to nothing takes no number with it. */
    @Test
    void whatIsNotSavedLeavesNoGap() {
        assertThatThrownBy(() -> book.save(NODE, KEPT, " ", "", ANNA)).hasMessage("the customer has no name");
        assertThatThrownBy(() -> book.save(NODE, KEPT, "n".repeat(201), "", ANNA)).hasMessage("the customer's name is longer than 200 characters");
        // A document under no name breaks the last statement of the transaction, when the number has been taken.
        assertThatThrownBy(() -> book.save(NODE, answer -> Map.of("x".repeat(10), new byte[0], "y", new byte[0]), "Nordmole", null, ANNA))
                .isInstanceOf(RuntimeException.class);
        assertThat(save("Nordmole").number()).hasToString("2026-0001");
        assertThat(book.history(new QuoteNumber(2026, 1), ANNA)).singleElement().extracting(HistoryEntry::entry).isEqualTo(1L);
    }

    @Test
    void severalAtOnceGetNumbersWithoutGapsOrDoubles() throws Exception {
        ExecutorService writers = Executors.newFixedThreadPool(8);
        try {
            List<Callable<String>> tasks = IntStream.range(0, 80).<Callable<String>>mapToObj(one ->
                    () -> save("customer " + one % 7).number().toString()).toList();
            List<String> numbers = new ArrayList<>();
            for (Future<String> made : writers.invokeAll(tasks)) {
                numbers.add(made.get());
            }
            assertThat(numbers).containsExactlyInAnyOrderElementsOf(IntStream.rangeClosed(1, 80).mapToObj(n ->
                    new QuoteNumber(2026, n).toString()).toList());
        } finally {
            writers.shutdownNow();
        }
        assertThat(book.find(BookSearch.everything(), ANNA)).hasSize(80);
    }

    /** Every state with every step: those that the contract of a quote's life allows, and no other. */
    /** Whoever is overtaken while the papers are made has them made again, and in the end while others wait. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void papersBearTheNumberWhoeverElseSaves(int overtaken) {
        AtomicInteger made = new AtomicInteger();
        SavedQuote saved = book.save(NODE, answer -> {
            if (made.getAndIncrement() < overtaken) {
                save("Orchard Surveys");
            }
            KeptAs number = ((QuoteAnswer) answer).number().orElseThrow();
            return Map.of("text.shop", number.toString().getBytes(StandardCharsets.UTF_8));
        }, "Nordmole", "", ANNA);
        assertThat(saved.number()).isEqualTo(new QuoteNumber(2026, overtaken + 1));
        assertThat(made).hasValue(overtaken + 1);
        assertThat(book.paper(saved, 1, "text.shop")).asString(StandardCharsets.UTF_8).isEqualTo(saved.number() + ", version 1");
        SavedQuote revised = book.revise(saved, NODE, answer -> Map.of("text.shop", ((QuoteAnswer) answer).number().orElseThrow().toString()
                .getBytes(StandardCharsets.UTF_8)), ANNA);
        assertThat(book.paper(revised, 2, "text.shop")).asString(StandardCharsets.UTF_8).isEqualTo(saved.number() + ", version 2");
    }

    @ParameterizedTest
    @EnumSource(QuoteStep.class)
    void aStepIsTakenFromItsStatesAlone(QuoteStep step) {
        Map<QuoteState, List<QuoteStep>> ways = Map.of(QuoteState.DRAFT, List.of(), QuoteState.SENT, List.of(QuoteStep.SEND),
                QuoteState.ACCEPTED, List.of(QuoteStep.SEND, QuoteStep.ACCEPT), QuoteState.DECLINED, List.of(QuoteStep.SEND, QuoteStep.DECLINE),
                QuoteState.WITHDRAWN, List.of(QuoteStep.WITHDRAW), QuoteState.PICKED, List.of(QuoteStep.SEND, QuoteStep.ACCEPT, QuoteStep.PICK),
                QuoteState.DELIVERED, List.of(QuoteStep.SEND, QuoteStep.ACCEPT, QuoteStep.PICK, QuoteStep.DELIVER),
                QuoteState.EXPIRED, List.of(QuoteStep.SEND));
        Set<QuoteState> taken = EnumSet.noneOf(QuoteState.class);
        ways.forEach((state, way) -> {
            SavedQuote quote = save("Nordmole");
            way.forEach(one -> step(quote, one));
            Signature day = state == QuoteState.EXPIRED ? on(quote.days().validUntil().orElseThrow().plusDays(1)) : ANNA;
            assertThat(book.find(quote.number(), day).state()).isEqualTo(state);
            try {
                if (step == QuoteStep.REVISE) {
                    book.revise(book.find(quote.number(), day), NODE, KEPT, day);
                } else {
                    step(quote, step, Optional.empty(), day);
                }
                taken.add(state);
            } catch (BookRefusal refused) {
                assertThat(refused.kind()).isEqualTo(BookRefusal.Kind.STEP);
                assertThat(refused).hasMessageContaining("%s is %s; %s takes a quote that is", quote.number(), state.label(), step.label());
                assertThat(book.history(quote.number(), day)).hasSize(way.size() + 1);
            }
        });
        assertThat(taken).isEqualTo(switch (step) {
            case SEND -> EnumSet.of(QuoteState.DRAFT);
            case ACCEPT -> EnumSet.of(QuoteState.SENT);
            case DECLINE -> EnumSet.of(QuoteState.SENT, QuoteState.EXPIRED, QuoteState.ACCEPTED);
            case WITHDRAW -> EnumSet.of(QuoteState.DRAFT, QuoteState.SENT, QuoteState.EXPIRED);
            case PICK -> EnumSet.of(QuoteState.ACCEPTED);
            case DELIVER -> EnumSet.of(QuoteState.PICKED);
            case REVISE -> EnumSet.of(QuoteState.DRAFT, QuoteState.SENT, QuoteState.EXPIRED);
        });
    }

    @Test
    void aVersionThatWasSentStaysAsItIs() {
        SavedQuote quote = save("Nordmole");
        step(quote, QuoteStep.SEND);
        Map<String, byte[]> other = Map.of("text.shop", "otherwise\n".getBytes(StandardCharsets.UTF_8));
        SavedQuote revised = book.revise(quote, NODE, answer -> other, ANNA);
        assertThat(revised.offered().version()).isEqualTo(2);
        assertThat(revised.state()).isEqualTo(QuoteState.DRAFT);
        assertThat(book.paper(revised, 1, "text.shop")).isEqualTo(PAPERS.get("text.shop"));
        assertThat(book.paper(revised, 2, "text.shop")).isEqualTo(other.get("text.shop"));
        assertThatThrownBy(() -> book.paper(revised, 3, "text.shop")).hasMessage("2026-0001 has no version 3; its last is 2");
        assertThatThrownBy(() -> book.revise(quote, NODE, answer -> other, ANNA))
                .hasMessage("2026-0001 was revised by somebody else meanwhile; version 2 is the last now");
    }

    /** Whoever reads the quote first and writes then would pass over what is written between the two. */
    @Test
    void aStepIsTakenOnlyWithTheVersionThatWasSeen() {
        SavedQuote quote = save("Nordmole");
        book.revise(quote, NODE, answer -> PAPERS, ANNA);
        Signature first = ANNA.withSeen(1);
        List<ThrowingCallable> steps = List.of(() -> book.find(quote.number(), first), () -> book.release(quote.number(), first),
                () -> book.decline(quote.number(), Optional.empty(), Optional.empty(), "", first),
                () -> book.hold(quote.number(), Optional.empty(), Optional.empty(), SHOP_TODAY, first),
                () -> book.step(quote.number(), QuoteStep.SEND, Optional.empty(), false, Optional.empty(), "", first));
        steps.forEach(step -> assertThatThrownBy(step)
                .hasMessage("2026-0001 was revised by somebody else meanwhile; version 2 is the last now"));
        for (int never : List.of(0, 3)) {
            assertThatThrownBy(() -> book.find(quote.number(), ANNA.withSeen(never)))
                    .hasMessage("2026-0001 has no version %s; its last is 2".formatted(never));
        }
        assertThat(book.step(quote.number(), QuoteStep.SEND, Optional.empty(), false, Optional.empty(), "", ANNA.withSeen(2)).state())
                .isEqualTo(QuoteState.SENT);
    }

    @Test
    void whatWasAskedIsKeptAndAnsweredAgain() {
        Asked asked = book.asked(save("Nordmole"));
        assertThat(asked.request()).isEqualTo(NODE.asked().request());
        assertThat(asked.catalog()).isEqualTo(Shelf.SHOP);
        Answered two = Shelf.answered(Answering.again("2026-0001", asked.with(List.of("machines=2"), Optional.empty()), new OnDay(Reserved.NOTHING, DAY), Shelf.TERMS));
        SavedQuote copy = book.copy(book.find(new QuoteNumber(2026, 1), ANNA), two, KEPT, "Orchard Surveys", ANNA);
        assertThat(copy.offered().machines()).isEqualTo(2);
        assertThat(book.asked(copy).sets()).containsExactly("machines=2");
        assertThat(book.history(copy.number(), ANNA)).singleElement().extracting(HistoryEntry::detail).isEqualTo("like 2026-0001");
    }

    @Test
    void aQuoteThatOffersNothingIsKeptAndNeverSent() {
        SavedQuote nothing = book.save(NOTHING, KEPT, "Nordmole", "", ANNA);
        assertThat(nothing.offered().price()).isEmpty();
        assertThatThrownBy(() -> step(nothing, QuoteStep.SEND)).hasMessage("2026-0001 offers nothing, for no build was found; revise it");
    }

    @Test
    void anOptionIsOneThatTheQuoteHas() {
        SavedQuote quote = save("Nordmole");
        assertThatThrownBy(() -> step(quote, QuoteStep.SEND, Optional.of(99), ANNA))
                .hasMessage("2026-0001 has no option 99; it has %s".formatted(((QuoteAnswer) NODE.answer()).outcome().ranked().size()));
    }

    @Test
    void aDraftThatHeldTooLongIsNotSent() {
        SavedQuote quote = save("Nordmole");
        Signature late = on(quote.days().validUntil().orElseThrow().plusDays(1));
        assertThatThrownBy(() -> step(quote, QuoteStep.SEND, Optional.empty(), late))
                .hasMessage("2026-0001 held until %s; revise it, which answers it again".formatted(quote.days().validUntil().get()));
        assertThat(step(quote, QuoteStep.SEND, Optional.empty(), on(quote.days().validUntil().get())).state())
                .isEqualTo(QuoteState.SENT);
    }

    @Test
    void quotesAreFoundByWhatTheyAre() {
        SavedQuote first = book.save(NODE, KEPT, "Größe & Co", "asks again in May", ANNA);
        SavedQuote second = book.save(NODE, KEPT, "Nordmole", "100 % sure", on(DAY.plusDays(3)));
        step(first, QuoteStep.SEND);
        assertThat(found(search().words("LÖSCHTEICH may"))).containsExactly(first.number());
        assertThat(found(search().words("% sure"))).containsExactly(second.number());
        assertThat(found(search().words("asks_again"))).isEmpty();
        assertThat(found(search().customer("größe"))).containsExactly(first.number());
        assertThat(found(search().state(QuoteState.SENT))).containsExactly(first.number());
        assertThat(found(search().state(QuoteState.DRAFT))).containsExactly(second.number());
        assertThat(found(search().since(DAY.plusDays(1)))).containsExactly(second.number());
        assertThat(found(search().until(DAY))).containsExactly(first.number());
        assertThat(found(search().part("M16"))).hasSameSizeAs(found(search()));
        assertThat(found(search().part("m16"))).as("whatever the case").hasSameSizeAs(found(search()));
        assertThat(found(search().part("M1"))).isEmpty();
        Signature later = on(DAY.plusYears(1));
        assertThat(book.find(search().state(QuoteState.EXPIRED).make(), later)).extracting(SavedQuote::number).containsExactly(first.number());
        assertThat(book.find(search().state(QuoteState.SENT).make(), later)).isEmpty();
    }

    private List<QuoteNumber> found(Wanted wanted) {
        return book.find(wanted.make(), ANNA).stream().map(SavedQuote::number).toList();
    }

    private static Wanted search() {
        return new Wanted(BookSearch.everything());
    }

    /** A search with one wish. */
    private record Wanted(BookSearch make) {

        Wanted words(String words) {
            return new Wanted(new BookSearch(make.customer(), make.state(), Optional.of(words), make.part(), make.since(), make.until()));
        }

        Wanted customer(String name) {
            return new Wanted(new BookSearch(Optional.of(name), make.state(), make.words(), make.part(), make.since(), make.until()));
        }

        Wanted state(QuoteState state) {
            return new Wanted(new BookSearch(make.customer(), Optional.of(state), make.words(), make.part(), make.since(), make.until()));
        }

        Wanted part(String sku) {
            return new Wanted(new BookSearch(make.customer(), make.state(), make.words(), Optional.of(sku), make.since(), make.until()));
        }

        Wanted since(LocalDate day) {
            return new Wanted(new BookSearch(make.customer(), make.state(), make.words(), make.part(), Optional.of(day), make.until()));
        }

        Wanted until(LocalDate day) {
            return new Wanted(new BookSearch(make.customer(), make.state(), make.words(), make.part(), make.since(), Optional.of(day)));
        }
    }

    @Test
    void aNumberThatIsNotThereIsSaid() {
        assertThatThrownBy(() -> book.find(new QuoteNumber(2026, 7), ANNA)).isInstanceOfSatisfying(BookRefusal.class,
                refused -> assertThat(refused.kind()).isEqualTo(BookRefusal.Kind.UNKNOWN)).hasMessage("there is no quote 2026-0007 in the book");
    }

    /** Eight at once, on five scarce lots, over a month. */
    @Test
    void noUnitIsPromisedTwiceAndNoneIsLost() throws Exception {
        Writers writers = new Writers(book);
        writers.work(8, Integer.getInteger("sledwright.steps", 100), Long.getLong("sledwright.seed", 1));
        writers.check();
        assertThat(writers.refusals()).containsKeys(BookRefusal.Kind.TAKEN, BookRefusal.Kind.STEP);
    }

    @Test
    void whatIsKeptForOneIsNotThereForAnother() {
        Catalog shop = Shelf.lots(Map.of("L1", 5));
        NewVersion three = Shelf.version(List.of(Map.of("L1", 3)), DAY.plusDays(5));
        QuoteNumber first = book.save(three, "Nordmole", "", ANNA).number();
        QuoteNumber second = book.save(three, "Orchard Surveys", "", ANNA).number();
        assertThat(book.hold(first, Optional.empty(), Optional.empty(), shop, ANNA).days().heldUntil()).contains(DAY.plusDays(5));
        assertThatThrownBy(() -> book.hold(second, Optional.empty(), Optional.empty(), shop, ANNA)).isInstanceOfSatisfying(BookRefusal.class, refused ->
                assertThat(refused.gone()).containsExactly(new Gone("M16", "L1", 3, 2, List.of(first))))
                .hasMessage("2026-0002 takes what is not there any more.\nM16 of lot L1: 3 wanted, 2 left; 2026-0001 has some");
        assertThat(left(shop, Optional.empty(), DAY)).isEqualTo(2);
        assertThat(left(shop, Optional.of(first), DAY)).isEqualTo(5);
        assertThat(left(shop, Optional.empty(), DAY.plusDays(6))).isEqualTo(5);
        assertThatThrownBy(() -> book.hold(second, Optional.empty(), Optional.of(DAY.plusDays(6)), shop, ANNA))
                .hasMessage("2026-0002 holds until 2026-03-07, and its parts no longer");
        assertThatThrownBy(() -> book.hold(second, Optional.empty(), Optional.of(DAY.minusDays(1)), shop, ANNA))
                .hasMessage("2026-03-01 is over; parts are held until a day to come");
        assertThatThrownBy(() -> book.release(second, ANNA)).hasMessage("2026-0002 holds nothing that could be given back");
        book.release(first, ANNA);
        assertThat(left(shop, Optional.empty(), DAY)).isEqualTo(5);
    }

    /** A list that was counted after the units were picked no longer has them. */
    @Test
    void whatWasPickedCountsUntilTheShelfIsCountedAnew() {
        Catalog shop = Shelf.lots(Map.of("L1", 5));
        SavedQuote quote = book.save(Shelf.version(List.of(Map.of("L1", 3)), DAY.plusDays(5)), "Nordmole", "", ANNA);
        for (QuoteStep step : List.of(QuoteStep.SEND, QuoteStep.ACCEPT, QuoteStep.PICK, QuoteStep.DELIVER)) {
            book.step(quote.number(), step, Optional.empty(), false, Optional.of(shop), "", ANNA);
        }
        assertThatThrownBy(() -> book.hold(quote.number(), Optional.empty(), Optional.empty(), shop, ANNA))
                .hasMessage("2026-0001 is delivered; only a draft and what was sent is held");
        assertThat(shop.pricedOn()).isBefore(DAY);
        assertThat(left(shop, Optional.empty(), DAY.plusYears(1))).isEqualTo(2);
        Reserved kept = book.reserved(Optional.empty(), ANNA);
        assertThat(kept.of("M16", "L1", DAY)).hasSize(1);
        assertThat(kept.of("M16", "L1", DAY.plusDays(1))).isEmpty();
    }

    /** Otherwise what was sold would be counted as on the shelf, and sold again. */
    @Test
    void noStepIsDatedBeforeTheOneBefore() {
        Catalog shop = Shelf.lots(Map.of("L1", 5));
        QuoteNumber number = book.save(Shelf.version(List.of(Map.of("L1", 3)), DAY.plusDays(5)), "Nordmole", "", ANNA).number();
        Signature before = on(DAY.minusDays(1));
        assertThatThrownBy(() -> book.hold(number, Optional.empty(), Optional.empty(), shop, before)).isInstanceOfSatisfying(BookRefusal.class, refused ->
                assertThat(refused.kind()).isEqualTo(BookRefusal.Kind.STEP))
                .hasMessage("save of 2026-0001 is dated 2026-03-02; hold comes after it and cannot be dated 2026-03-01");
        book.hold(number, Optional.empty(), Optional.empty(), shop, on(DAY.plusDays(1)));
        assertThatThrownBy(() -> book.release(number, ANNA)).hasMessageEndingWith("release comes after it and cannot be dated 2026-03-02");
        for (QuoteStep step : List.of(QuoteStep.SEND, QuoteStep.ACCEPT, QuoteStep.PICK, QuoteStep.DELIVER)) {
            assertThatThrownBy(() -> book.step(number, step, Optional.empty(), false, Optional.of(shop), "", before))
                    .hasMessageEndingWith("; %s comes after it and cannot be dated 2026-03-01", step.label());
            book.step(number, step, Optional.empty(), false, Optional.of(shop), "", on(DAY.plusDays(1)));
        }
        SavedQuote other = save("Fenland");
        assertThatThrownBy(() -> book.revise(other, NODE, KEPT, before)).hasMessageContaining("; revise comes after it");
        step(other, QuoteStep.SEND);
        step(other, QuoteStep.ACCEPT);
        assertThat(left(shop, Optional.empty(), DAY)).isEqualTo(2);
    }

    /** Whoever says that it is still the day of a hold does not get what others took since it was over. */
    @Test
    void aHoldThatIsOverIsNotAcceptedOnADayBefore() {
        Catalog shop = Shelf.lots(Map.of("L1", 5));
        NewVersion three = Shelf.version(List.of(Map.of("L1", 3)), DAY.plusDays(9));
        QuoteNumber first = book.save(three, "Nordmole", "", ANNA).number();
        QuoteNumber second = book.save(three, "Fenland", "", ANNA).number();
        book.step(first, QuoteStep.SEND, Optional.empty(), false, Optional.of(shop), "", ANNA);
        book.hold(first, Optional.empty(), Optional.of(DAY.plusDays(2)), shop, ANNA);
        Signature later = on(DAY.plusDays(3));
        book.step(second, QuoteStep.SEND, Optional.empty(), false, Optional.of(shop), "", later);
        book.step(second, QuoteStep.ACCEPT, Optional.empty(), false, Optional.of(shop), "", later);
        assertThatThrownBy(() -> book.step(first, QuoteStep.ACCEPT, Optional.empty(), false, Optional.of(shop), "", on(DAY.plusDays(2))))
                .hasMessage("2026-0001 takes what is not there any more.\nM16 of lot L1: 3 wanted, 2 left; 2026-0002 has some");
    }

    /** The shop stands by what it held, whatever has become of the lot; anybody else comes to nothing. */
    @Test
    void whatWasHeldCanBeAccepted() {
        Catalog shop = Shelf.lots(Map.of("L1", 5));
        SavedQuote quote = book.save(Shelf.version(List.of(Map.of("L1", 3), Map.of("L1", 1)), DAY.plusDays(5)), "Nordmole", "", ANNA);
        Catalog empty = Shelf.lots(Map.of("L1", 0));
        book.step(quote.number(), QuoteStep.SEND, Optional.empty(), true, Optional.of(shop), "", ANNA);
        assertThatThrownBy(() -> book.step(quote.number(), QuoteStep.ACCEPT, Optional.of(2), false, Optional.of(empty), "", ANNA))
                .hasMessage("2026-0001 takes what is not there any more.\nM16 of lot L1: 1 wanted, 0 left");
        assertThat(book.step(quote.number(), QuoteStep.ACCEPT, Optional.empty(), false, Optional.of(empty), "", ANNA).state())
                .isEqualTo(QuoteState.ACCEPTED);
        assertThat(left(shop, Optional.empty(), DAY.plusYears(1))).isEqualTo(2);
        assertThat(book.step(quote.number(), QuoteStep.DECLINE, Optional.empty(), false, Optional.empty(), "too late", ANNA).reason())
                .isEqualTo("too late");
        assertThat(left(shop, Optional.empty(), DAY)).isEqualTo(5);
    }

    private int left(Catalog shop, Optional<QuoteNumber> but, LocalDate day) {
        return book.reserved(but, on(day)).less(shop).lots("M16").get(0).available();
    }

    @Test
    void whatHasBecomeOfOpenQuotesIsSaidAndNotWorkedOutTwice() throws IOException {
        Path today = Folders.copy(Shelf.SHOP, folder.resolve("today"));
        SavedQuote same = save("Nordmole");
        SavedQuote held = save("Orchard Surveys");
        book.hold(held.number(), Optional.empty(), Optional.empty(), SHOP_TODAY, ANNA);
        book.save(NOTHING, KEPT, "Nordmole", "", ANNA);
        step(save("Nordmole"), QuoteStep.WITHDRAW);
        List<Reviewed> first = book.review(today, false, ANNA, Shelf.TERMS);
        assertThat(first).extracting(Reviewed::outcome).containsExactly(Reviewed.Outcome.SAME, Reviewed.Outcome.HELD,
                Reviewed.Outcome.IMPOSSIBLE);
        assertThat(first).extracting(Reviewed::now).containsExactly(same.offered().price(), Optional.empty(), Optional.empty());
        Files.writeString(today.resolve("offers.csv"), Files.readString(today.resolve("offers.csv")).replace("REED-S,A2,Marsh Trade,used,150,1,9",
                "REED-S,A2,Marsh Trade,used,160,1,1"));
        List<Reviewed> second = book.review(today, false, ANNA, Shelf.TERMS);
        assertThat(second.get(0).outcome()).isEqualTo(Reviewed.Outcome.DEARER);
        assertThat(second.get(0).soldOut()).containsExactly("REED-S of lot A2: 1 wanted, 0 left");
        // Nothing is searched for again: what it would find now is not what stands there.
        book.release(held.number(), ANNA);
        assertThat(book.review(today, false, ANNA, Shelf.TERMS)).extracting(Reviewed::outcome).containsExactly(Reviewed.Outcome.DEARER,
                Reviewed.Outcome.HELD, Reviewed.Outcome.IMPOSSIBLE);
        assertThat(book.review(today, true, ANNA, Shelf.TERMS)).extracting(Reviewed::now).startsWith(
                same.offered().price().map(price -> price.add(BigDecimal.TEN)), same.offered().price().map(price -> price.add(BigDecimal.TEN)));
    }

    /** That nothing was found in time does not say that there is nothing. */
    @Test
    void whatTimeWasTooShortForIsUndecidedUntilTheNextReview() throws IOException {
        Path today = Folders.copy(Shelf.SHOP, folder.resolve("today"));
        save("Nordmole");
        book.save(ORDER, KEPT, "Nordmole", "", ANNA);
        assertThat(book.review(today, false, ANNA, Terms.within(Duration.ZERO))).extracting(Reviewed::outcome, Reviewed::now)
                .containsExactly(tuple(Reviewed.Outcome.UNDECIDED, Optional.empty()), tuple(Reviewed.Outcome.UNDECIDED, Optional.empty()));
        assertThat(book.review(today, false, ANNA, Shelf.TERMS)).extracting(Reviewed::outcome).containsExactly(Reviewed.Outcome.SAME, Reviewed.Outcome.SAME);
    }

    /** Two that were accepted; then the lot that both were promised from is short. */
    @Test
    void promisesAreDrawnAnewAndAppliedOrNot() throws IOException {
        Path today = Folders.copy(Shelf.SHOP, folder.resolve("today"));
        QuoteNumber first = accepted("Nordmole");
        QuoteNumber second = accepted("Orchard Surveys");
        offer(today, "REED-S,A2,Marsh Trade,used,150,1,9,0,\n", "REED-S,A2,Marsh Trade,used,150,1,1,0,\nREED-S,A20,Marsh Trade,used,151,1,1,0,\n");
        Allocated allocated = book.allocate(today, ANNA, Shelf.TERMS);
        assertThat(allocated.promises()).extracting(Allocated.Drawn::fate).containsExactlyInAnyOrder(Allocated.Fate.SAME, Allocated.Fate.MOVED);
        Allocated.Drawn moved = allocated.promises().stream().filter(one -> one.fate() == Allocated.Fate.MOVED).findFirst().orElseThrow();
        assertThat(moved.lots().fresh()).containsExactly(Map.entry(new LotName("REED-S", "A20"), 1));
        assertThat(moved.lots().given()).containsExactly(Map.entry(new LotName("REED-S", "A2"), 1));
        assertThat(allocated.quality().leastCost()).contains(allocated.quality().found().cost());
        // Nothing is written by that, and nothing once the book or the shop has moved on.
        SavedQuote third = save("Third Customer");
        assertThat(book.history(moved.quote().number(), ANNA)).extracting(HistoryEntry::step).containsExactly("save", "send", "accept");
        book.hold(third.number(), Optional.empty(), Optional.of(DAY.plusDays(1)), SHOP_TODAY, ANNA);
        assertThatThrownBy(() -> book.apply(allocated, today, ANNA)).isInstanceOfSatisfying(BookRefusal.class, refused ->
                assertThat(refused.kind()).isEqualTo(BookRefusal.Kind.TAKEN))
                .hasMessage("the book has moved on since stock was drawn; nothing was changed. Allocate again");
        book.release(third.number(), ANNA);
        assertThatThrownBy(() -> book.apply(allocated, Shelf.SHOP, ANNA))
                .hasMessage("the catalogue has changed since stock was drawn; nothing was changed. Allocate again");
        assertThat(book.apply(allocated, today, ANNA)).isEqualTo(1);
        assertThat(book.history(moved.quote().number(), ANNA)).last().extracting(HistoryEntry::step, HistoryEntry::detail)
                .containsExactly("allocate", "units from other lots: 1");
        assertThat(book.reserved(Optional.empty(), ANNA).of("REED-S", "A20", DAY)).extracting(Reserved.Kept::number)
                .containsExactly(moved.quote().number());
        book.step(first, QuoteStep.PICK, Optional.empty(), false, Optional.empty(), "", ANNA);
        List<Allocated.Drawn> again = book.allocate(today, ANNA, Shelf.TERMS).promises();
        assertThat(again).extracting(Allocated.Drawn::fate).containsExactly(Allocated.Fate.PICKED, Allocated.Fate.SAME);
        assertThat(again).extracting(one -> one.quote().number()).containsExactly(first, second);
    }

    /** Two desks at once: what the second drew rests on units that the first has given back. */
    @Test
    void anAllocationIsNotAppliedOnceAnotherWas() throws IOException {
        Path today = Folders.copy(Shelf.SHOP, folder.resolve("today"));
        QuoteNumber number = accepted("Nordmole");
        offer(today, "REED-S,A2,Marsh Trade,used,150,1,9,0,\n", "REED-S,A2,Marsh Trade,used,150,1,0,0,\nREED-S,A20,Marsh Trade,used,151,1,1,0,\n");
        AtomicBoolean first = new AtomicBoolean(true);
        Allocated second = book.allocate(today, ANNA, Shelf.TERMS.heardBy(progress -> {
            if (first.getAndSet(false)) {
                book.apply(book.allocate(today, ANNA, Shelf.TERMS), today, ANNA);
            }
        }));
        assertThat(first).isFalse();
        assertThatThrownBy(() -> book.apply(second, today, ANNA))
                .hasMessage("the book has moved on since stock was drawn; nothing was changed. Allocate again");
        assertThat(book.history(number, ANNA)).extracting(HistoryEntry::step).containsExactly("save", "send", "accept", "allocate");
    }

    /** Its units are kept lot by lot over all lines. */
    @Test
    void anOrderLivesAsAQuoteDoes() {
        SavedQuote order = book.save(ORDER, KEPT, "Nordmole", "", ANNA);
        assertThat(book.isOrder(order)).isTrue();
        assertThat(book.isOrder(save("Orchard Surveys"))).isFalse();
        assertThat(order.offered().machines()).isEqualTo(3);
        assertThat(order.offered().price()).contains(new BigDecimal("999.00"));
        book.hold(order.number(), Optional.empty(), Optional.empty(), SHOP_TODAY, ANNA);
        assertThat(book.reserved(Optional.empty(), ANNA).lots()).extracting(kept -> kept.sku() + " " + kept.lot() + " " + kept.units())
                .containsExactlyInAnyOrder("REED-S A2 2", "WREN-2 A1 1", "H1-08 A3 3", "WREN-HS-1 A9 3", "RS-750 A11 1", "M16 A6 2", "M64 A8 1");
        Catalog less = SHOP_TODAY.withEachLot(lot -> lot.sku().equals("REED-S") ? lot.with(3, lot.breaks()) : lot);
        SavedQuote second = book.copy(order, ORDER, KEPT, "Fenland", ANNA);
        assertThatThrownBy(() -> book.step(second.number(), QuoteStep.SEND, Optional.empty(), true, Optional.of(less), "", ANNA))
                .isInstanceOfSatisfying(BookRefusal.class, refused -> assertThat(refused.gone()).extracting(Gone::toString)
                .containsExactly("REED-S of lot A2: 2 wanted, 1 left; 2026-0001 has some"));
        SavedQuote revised = book.revise(order, Shelf.answered(new AskingAgain(book, Optional.empty(), Shelf.TERMS)
                .of(order, List.of("lines.web.machines=1"), Optional.of(order.number()), ANNA)), KEPT, ANNA);
        assertThat(revised.offered().machines()).isEqualTo(2);
        for (QuoteStep step : List.of(QuoteStep.SEND, QuoteStep.ACCEPT, QuoteStep.PICK, QuoteStep.DELIVER)) {
            revised = book.step(order.number(), step, Optional.empty(), step == QuoteStep.SEND, Optional.of(SHOP_TODAY), "", ANNA);
        }
        assertThat(revised.state()).isEqualTo(QuoteState.DELIVERED);
        assertThat(book.reserved(Optional.empty(), ANNA).lots()).filteredOn(kept -> kept.sku().equals("REED-S")).extracting(Reserved.Kept::units)
                .containsExactly(1);
        assertThat(book.demand(Shelf.SHOP, 1, ANNA).classes()).extracting(one -> one.name() + one.months().bought())
                .containsExactlyInAnyOrder("web[1]", "files[1]", "web like 2026-0003[0]");
    }

    /** Not all of its machines can be had, so nothing is offered. */
    @Test
    void anOrderThatIsShortIsKeptAndNeverSent() {
        SavedQuote order = book.save(Shelf.answered(Answering.again("order", ORDER.asked().with(List.of("lines.web.machines=30"), Optional.empty()),
                new OnDay(Reserved.NOTHING, DAY), Shelf.TERMS)), KEPT, "Nordmole", "", ANNA);
        assertThat(order.offered().price()).isEmpty();
        assertThatThrownBy(() -> step(order, QuoteStep.SEND)).hasMessage("2026-0001 offers nothing, for not all that was asked for was found; revise it");
        assertThatThrownBy(() -> QuotedMachines.of(book, order.number(), Optional.empty(), ANNA, Shelf.TERMS))
                .hasMessage("2026-0001 offers nothing, for not all that was asked for was found");
    }

    /** Line by line, with what the customer was told of each; the bench gets the machines that were given. */
    @Test
    void anOrderIsDrawnAnewLineByLine() throws IOException {
        Path today = Folders.copy(Shelf.SHOP, folder.resolve("today"));
        SavedQuote order = book.save(ORDER, KEPT, "Nordmole", "", ANNA);
        step(order, QuoteStep.SEND);
        step(order, QuoteStep.ACCEPT);
        assertThat(book.allocate(today, ANNA, Shelf.TERMS).promises()).extracting(Allocated.Drawn::fate).containsExactly(Allocated.Fate.SAME);
        offer(today, "REED-S,A2,Marsh Trade,used,150,1,9,0,\n", "REED-S,A2,Marsh Trade,used,150,1,1,0,\nREED-S,A20,Marsh Trade,used,151,1,1,0,\n");
        Allocated moved = book.allocate(today, ANNA, Shelf.TERMS);
        assertThat(moved.promises().get(0).fate()).isEqualTo(Allocated.Fate.MOVED);
        assertThat(moved.promises().get(0).lots().fresh()).containsExactly(Map.entry(new LotName("REED-S", "A20"), 1));
        assertThat(moved.promises().get(0).cost()).contains(new BigDecimal("1000.00"));
        assertThatThrownBy(() -> book.apply(moved, today, on(DAY.minusDays(1)))).hasMessageEndingWith("; allocate comes after it and cannot be dated 2026-03-01");
        assertThat(book.apply(moved, today, ANNA)).isEqualTo(1);
        assertThat(lots(today)).contains("REED-S A2 1", "REED-S A20 1", "M64 A8 1");
        assertThat(book.allocate(today, ANNA, Shelf.TERMS).promises()).extracting(Allocated.Drawn::fate).containsExactly(Allocated.Fate.SAME);
        offer(today, "M64,A8,Marsh Trade,used,78,1,12,0,40\n", "");
        offer(today, "M16,A6,Fen Surplus,used,21.50,1,60,2,12.25\nM16,A6,Fen Surplus,used,19.00,16,60,2,12.25\nM16,A7,Marsh Trade,new,44,1,100,7,\n",
                "M16,A6,Fen Surplus,used,21.50,1,2,2,12.25\n");
        Allocated broken = book.allocate(today, ANNA, Shelf.TERMS);
        assertThat(broken.isWhole()).isFalse();
        assertThat(broken.promises().get(0).lacks()).containsExactly("files, build 1: M64: 1 wanted, 0 left");
        book.apply(broken, today, ANNA);
        assertThat(book.history(order.number(), ANNA)).last().extracting(HistoryEntry::detail).isEqualTo("not all of it is left");
        assertThatThrownBy(() -> step(order, QuoteStep.PICK)).hasMessage("not all machines of 2026-0001 have their parts; allocate again, or have it declined");
        assertThat(lots(today)).contains("M16 A6 2").doesNotContain("M64 A8 1");
        assertThatThrownBy(() -> QuotedMachines.of(book, order.number(), Optional.of(today), ANNA, Shelf.TERMS))
                .hasMessage("not all machines of 2026-0001 have their parts; allocate again, or have it declined");
    }

    private List<String> lots(Path shop) {
        OrderAnswer machines = QuotedMachines.order(book, new QuoteNumber(2026, 1), Optional.of(shop), ANNA, Shelf.TERMS);
        return machines.outcome().picks().stream().map(pick -> "%s %s %s".formatted(pick.sku(), pick.lot().lot(), pick.quantity())).toList();
    }

    /** What cannot be kept is named with what would help, holds no parts of others and is not picked. */
    @Test
    void aPromiseThatCannotBeKeptIsNamedWithWaysOut() throws IOException {
        Path today = Folders.copy(Shelf.SHOP, folder.resolve("today"));
        accepted("Nordmole");
        QuoteNumber second = accepted("Orchard Surveys");
        offer(today, "REED-S,A2,Marsh Trade,used,150,1,9,0,", "REED-S,A2,Marsh Trade,used,150,1,1,0,");
        offer(today, "WREN-2,A1,Marsh Trade,used,310.00,1,4,0,220.00", "WREN-2,A1,Marsh Trade,used,310.00,1,4,30,220.00");
        SavedQuote open = save("Third Customer");
        book.hold(open.number(), Optional.empty(), Optional.empty(), SHOP_TODAY, ANNA);
        Allocated allocated = book.allocate(today, ANNA, Shelf.TERMS);
        assertThat(allocated.isWhole()).isFalse();
        assertThat(allocated.strained()).isEmpty();
        Allocated.Drawn broken = allocated.promises().get(1);
        assertThat(allocated.promises()).allSatisfy(one -> assertThat(one.fate()).isEqualTo(Allocated.Fate.BROKEN));
        assertThat(broken.lacks()).containsExactly("REED-S: 1 wanted, 0 left");
        assertThat(broken.ways()).anySatisfy(way -> assertThat(way).contains("30 days"));
        book.release(open.number(), ANNA);
        allocated = book.allocate(today, ANNA, Shelf.TERMS);
        assertThat(allocated.promises()).extracting(Allocated.Drawn::fate).containsExactly(Allocated.Fate.SAME, Allocated.Fate.BROKEN);
        assertThat(allocated.promises().get(1).lacks()).containsExactly("REED-S: 1 wanted, 0 left; promised to 2026-0001");
        assertThat(allocated.quality().leastBroken()).isEqualTo(1);
        book.apply(allocated, today, ANNA);
        assertThat(book.history(second, ANNA)).last().extracting(HistoryEntry::detail).isEqualTo("nothing is left for it");
        assertThatThrownBy(() -> book.step(second, QuoteStep.PICK, Optional.empty(), false, Optional.empty(), "", ANNA))
                .hasMessage("nothing is kept for 2026-0002, since nothing was left for it; allocate again, or have it declined");
        assertThatThrownBy(() -> QuotedMachines.of(book, second, Optional.of(today), ANNA, Shelf.TERMS)).hasMessageStartingWith("nothing is kept for 2026-0002, ");
        assertThatThrownBy(() -> QuotedMachines.order(book, second, Optional.of(today), ANNA, Shelf.TERMS)).hasMessageStartingWith("nothing is kept for 2026-0002, ");
        book.decline(second, Optional.empty(), Optional.of(BigDecimal.ONE), "", ANNA);
        assertThat(QuotedMachines.order(book, second, Optional.empty(), ANNA, Shelf.TERMS).machines()).isEqualTo(1);
    }

    private QuoteNumber accepted(String customer) {
        SavedQuote quote = save(customer);
        step(quote, QuoteStep.SEND);
        step(quote, QuoteStep.ACCEPT);
        return quote.number();
    }

    static void offer(Path shop, String old, String fresh) throws IOException {
        String offers = Files.readString(shop.resolve("offers.csv"));
        assertThat(offers).contains(old);
        Files.writeString(shop.resolve("offers.csv"), offers.replace(old, fresh));
    }

    /** Three who share a review: none takes what another has, and what a dead one had comes back. */
    @Test
    void whatOneWorksOnNobodyElseDoes() throws Exception {
        for (int quote = 0; quote < 60; quote++) {
            book.save(Shelf.version(List.of(Map.of("L1", 1)), DAY.plusDays(5)), "Nordmole", "", ANNA);
        }
        book.rows(sql -> {
            ReviewRows.begin(sql, "run", false, DAY);
            return null;
        });
        long now = 1_000_000_000L;
        List<QuoteNumber> dead = book.rows(sql -> ReviewRows.take(sql, "run", 7, now));
        ExecutorService three = Executors.newFixedThreadPool(3);
        List<QuoteNumber> taken = new ArrayList<>();
        try {
            Callable<List<QuoteNumber>> worker = () -> {
                List<QuoteNumber> mine = new ArrayList<>();
                for (List<QuoteNumber> some = null; some == null || !some.isEmpty(); mine.addAll(some)) {
                    some = book.rows(sql -> ReviewRows.take(sql, "run", 4, now + 1));
                }
                return mine;
            };
            for (Future<List<QuoteNumber>> one : three.invokeAll(List.of(worker, worker, worker))) {
                taken.addAll(one.get());
            }
        } finally {
            three.shutdownNow();
        }
        assertThat(taken).doesNotHaveDuplicates().hasSize(53).doesNotContainAnyElementsOf(dead);
        List<QuoteNumber> back = book.rows(sql -> ReviewRows.take(sql, "run", 100, now + ReviewRows.SILENCE_MS + 1));
        assertThat(back).isEqualTo(dead);
    }
}
