package sledwright.domain;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Collections;
import java.util.Currency;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/** A shop's parts, prices and stock. */
public final class Catalog {

    private final Shop shop;
    private final Assortment assortment;
    private final Index index;
    private final Map<String, List<Lot>> lots;
    private final LocalDate today;
    /** Worked out when it is first asked for; of two threads that ask at once both find the same. */
    private GreatestMachine greatest;

    /**
     * Parts by their numbers; the same assortment on other offers shares it.
     *
     * @param ofEnclosures enclosures, and supplies that they alone list
     */
    private record Index(Map<String, Part> parts, Set<String> ofEnclosures) {

        static Index of(Assortment assortment) {
            Map<String, Part> parts = new LinkedHashMap<>();
            Set<String> ofEnclosures = new HashSet<>();
            assortment.platforms().forEach(platform -> {
                platform.cooling().forEach(kit -> parts.put(kit.sku(), kit));
                platform.power().supplies().forEach(supply -> parts.put(supply.sku(), supply));
            });
            assortment.enclosures().forEach(enclosure -> {
                ofEnclosures.add(enclosure.sku());
                enclosure.supplies().stream().filter(supply -> !parts.containsKey(supply.sku()))
                        .forEach(supply -> ofEnclosures.add(supply.sku()));
            });
            assortment.enclosures().forEach(enclosure -> enclosure.supplies().forEach(supply -> parts.putIfAbsent(supply.sku(), supply)));
            Stream.of(assortment.platforms(), assortment.enclosures(), assortment.processors(), assortment.modules(), assortment.drives(),
                    assortment.cards(), assortment.extras()).forEach(kind -> kind.forEach(part -> parts.put(part.sku(), part)));
            return new Index(parts, ofEnclosures);
        }
    }

    /** @param lots sku -> its lots */
    public Catalog(Shop shop, Assortment assortment, Map<String, List<Lot>> lots) {
        this(shop, assortment, Index.of(assortment), lots, shop.prices().day());
    }

    private Catalog(Shop shop, Assortment assortment, Index index, Map<String, List<Lot>> lots, LocalDate today) {
        this.shop = shop;
        this.assortment = assortment;
        this.index = index;
        this.lots = Map.copyOf(lots);
        this.today = today;
    }

    /**
     * The same parts on other offers.
     *
     * @param offers sku -> its lots
     */
    public Catalog withLots(Map<String, List<Lot>> offers) {
        return new Catalog(shop, assortment, index, offers, today);
    }

    /** The same parts on the same offers, each changed. */
    public Catalog withEachLot(UnaryOperator<Lot> changed) {
        Map<String, List<Lot>> offers = new LinkedHashMap<>();
        lots.forEach((sku, old) -> offers.put(sku, old.stream().map(changed).toList()));
        return withLots(offers);
    }

    /** The same parts on the same offers, but for the unit price of one of them, minor units. */
    public Catalog withPrice(String sku, long unitPrice) {
        return withEachLot(lot -> lot.sku().equals(sku) ? lot.at(unitPrice) : lot);
    }

    /**
     * The same parts on other offers, put together at other rates.
     *
     * @param offers sku -> its lots
     */
    public Catalog with(Map<String, List<Lot>> offers, Labour rates) {
        return new Catalog(shop.with(rates), assortment, index, offers, today);
    }

    /** The same shop as it answers on another day. */
    public Catalog withToday(LocalDate day) {
        return new Catalog(shop, assortment, index, lots, day);
    }

    /** What the shop says of itself. */
    public Shop shop() {
        return shop;
    }

    public String name() {
        return shop.name();
    }

    public Currency currency() {
        return shop.prices().currency();
    }

    /** The day of the prices. */
    public LocalDate pricedOn() {
        return shop.prices().day();
    }

    /** The day of the answer; the day of the prices where nobody says. */
    public LocalDate today() {
        return today;
    }

    public Labour labour() {
        return shop.prices().labour();
    }

    /** What the shop puts on its documents. */
    public Stationery stationery() {
        return shop.stationery();
    }

    /** What the shop calls its suppliers, and which of them it is itself. */
    public SupplierNames suppliers() {
        return shop.suppliers();
    }

    /** Name -> what a machine is to do, in the order in which the shop lists them. */
    public Map<String, Workload> workloads() {
        return shop.workloads();
    }

    /** What the shop holds itself to where a request says nothing else. */
    public House house() {
        return shop.house();
    }

    public Map<String, Double> throughputFactors() {
        return shop.throughputFactors();
    }

    /** Every part by kind. */
    public Assortment assortment() {
        return assortment;
    }

    public List<Platform> platforms() {
        return assortment.platforms();
    }

    /** What houses sleds. */
    public List<Enclosure> enclosures() {
        return assortment.enclosures();
    }

    /** Whether the part is an enclosure or a supply that only enclosures list, so that no machine can hold it. */
    public boolean isOfEnclosuresAlone(String sku) {
        return index.ofEnclosures.contains(sku);
    }

    /** Whether some enclosure takes the platform; such a machine runs in one alone. */
    public boolean isSled(Platform platform) {
        return assortment.enclosures().stream().anyMatch(enclosure -> enclosure.takes(platform));
    }

    public List<Processor> processors() {
        return assortment.processors();
    }

    public List<MemoryModule> modules() {
        return assortment.modules();
    }

    public List<Drive> drives() {
        return assortment.drives();
    }

    public List<Card> cards() {
        return assortment.cards();
    }

    public List<Extra> extras() {
        return assortment.extras();
    }

    /** Every part of every kind; a kit or supply that several platforms take stands once. */
    public Collection<Part> parts() {
        return Collections.unmodifiableCollection(index.parts.values());
    }

    public Optional<Platform> platform(String sku) {
        return find(sku, Platform.class);
    }

    public Optional<Enclosure> enclosure(String sku) {
        return find(sku, Enclosure.class);
    }

    public Optional<Processor> processor(String sku) {
        return find(sku, Processor.class);
    }

    public Optional<MemoryModule> module(String sku) {
        return find(sku, MemoryModule.class);
    }

    public Optional<Drive> drive(String sku) {
        return find(sku, Drive.class);
    }

    public Optional<Card> card(String sku) {
        return find(sku, Card.class);
    }

    public Optional<Extra> extra(String sku) {
        return find(sku, Extra.class);
    }

    private <P extends Part> Optional<P> find(String sku, Class<P> kind) {
        return part(sku).filter(kind::isInstance).map(kind::cast);
    }

    public Optional<Part> part(String sku) {
        return Optional.ofNullable(index.parts.get(sku));
    }

    /** What no machine of the catalogue goes beyond. */
    public GreatestMachine greatest() {
        GreatestMachine known = greatest;
        if (known == null) {
            known = GreatestMachine.of(this);
            greatest = known;
        }
        return known;
    }

    /** The lots of a part; empty: it cannot be bought. */
    public List<Lot> lots(String sku) {
        return lots.getOrDefault(sku, List.of());
    }

    /** Sku -> its lots, for every part that is offered. */
    public Map<String, List<Lot>> lots() {
        return lots;
    }

    /** An amount of minor units as people write it, in units of the currency. */
    public BigDecimal amount(long minor) {
        return BigDecimal.valueOf(minor, Math.max(0, shop.prices().currency().getDefaultFractionDigits()));
    }
}
