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

    private final String name;
    private final Currency currency;
    private final LocalDate pricedOn;
    private final Labour labour;
    private final Map<String, Double> throughputFactors;
    private final Assortment assortment;
    private final Map<String, Part> parts = new LinkedHashMap<>();
    private final Set<String> ofEnclosures = new HashSet<>();
    private final Map<String, List<Lot>> lots;
    private final Stationery stationery;
    private final SupplierNames suppliers;
    private final House house;
    private final LocalDate today;
    private final Map<String, Workload> workloads;

    /** A shop without enclosures. */
    public Catalog(String name, Currency currency, LocalDate pricedOn, Labour labour,
                   Map<String, Double> throughputFactors, List<Platform> platforms, List<Processor> processors,
                   List<MemoryModule> modules, Map<String, List<Lot>> lots) {
        this(name, currency, pricedOn, labour, throughputFactors, platforms, List.of(), processors, modules, lots);
    }

    /** A shop without drives, cards and extras. */
    public Catalog(String name, Currency currency, LocalDate pricedOn, Labour labour,
                   Map<String, Double> throughputFactors, List<Platform> platforms, List<Enclosure> enclosures,
                   List<Processor> processors, List<MemoryModule> modules, Map<String, List<Lot>> lots) {
        this(name, currency, pricedOn, labour, throughputFactors,
                new Assortment(platforms, enclosures, processors, modules, List.of(), List.of(), List.of()), lots, Stationery.PLAIN);
    }

    /**
     * A shop that calls its suppliers as its offers do.
     *
     * @param throughputFactors processor generation -> throughput of one core at one GHz
     * @param lots              sku -> its lots
     */
    public Catalog(String name, Currency currency, LocalDate pricedOn, Labour labour, Map<String, Double> throughputFactors,
                   Assortment assortment, Map<String, List<Lot>> lots, Stationery stationery) {
        this(name, currency, pricedOn, labour, throughputFactors, assortment, lots, stationery,
                SupplierNames.AS_WRITTEN, House.OPEN, pricedOn, Map.of());
    }

    private Catalog(String name, Currency currency, LocalDate pricedOn, Labour labour, Map<String, Double> throughputFactors,
                    Assortment assortment, Map<String, List<Lot>> lots, Stationery stationery, SupplierNames suppliers,
                    House house, LocalDate today, Map<String, Workload> workloads) {
        this.name = name;
        this.currency = currency;
        this.pricedOn = pricedOn;
        this.labour = labour;
        this.throughputFactors = Map.copyOf(throughputFactors);
        this.assortment = assortment;
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
        this.lots = Map.copyOf(lots);
        this.stationery = stationery;
        this.suppliers = suppliers;
        this.house = house;
        this.today = today;
        this.workloads = Collections.unmodifiableMap(new LinkedHashMap<>(workloads));
    }

    /**
     * The same parts on other offers.
     *
     * @param offers sku -> its lots
     */
    public Catalog withLots(Map<String, List<Lot>> offers) {
        return with(offers, labour);
    }

    /** The same parts on the same offers, each changed. */
    public Catalog withEachLot(UnaryOperator<Lot> changed) {
        Map<String, List<Lot>> offers = new LinkedHashMap<>();
        lots.forEach((sku, old) -> offers.put(sku, old.stream().map(changed).toList()));
        return withLots(offers);
    }

    /**
     * The same parts on other offers, put together at other rates.
     *
     * @param offers sku -> its lots
     */
    public Catalog with(Map<String, List<Lot>> offers, Labour rates) {
        return new Catalog(name, currency, pricedOn, rates, throughputFactors, assortment, offers, stationery, suppliers, house, today,
                workloads);
    }

    /** The same shop with what it puts on its documents. */
    public Catalog withStationery(Stationery own) {
        return new Catalog(name, currency, pricedOn, labour, throughputFactors, assortment, lots, own, suppliers, house, today,
                workloads);
    }

    /** The same shop with what it calls its suppliers; the names of its lots are resolved. */
    public Catalog withSuppliers(SupplierNames called) {
        return new Catalog(name, currency, pricedOn, labour, throughputFactors, assortment, lots, stationery, called, house, today,
                workloads);
    }

    /** The same shop with what it holds itself to. */
    public Catalog withHouse(House own) {
        return new Catalog(name, currency, pricedOn, labour, throughputFactors, assortment, lots, stationery, suppliers, own, today,
                workloads);
    }

    /** The same shop as it answers on another day. */
    public Catalog withToday(LocalDate day) {
        return new Catalog(name, currency, pricedOn, labour, throughputFactors, assortment, lots, stationery, suppliers, house, day,
                workloads);
    }

    /** The same shop with what its customers run. */
    public Catalog withWorkloads(Map<String, Workload> named) {
        return new Catalog(name, currency, pricedOn, labour, throughputFactors, assortment, lots, stationery, suppliers, house, today,
                named);
    }

    /** The same shop with these parts instead. */
    public Catalog with(Assortment other) {
        return new Catalog(name, currency, pricedOn, labour, throughputFactors, other, lots, stationery, suppliers, house, today,
                workloads);
    }

    public String name() {
        return name;
    }

    public Currency currency() {
        return currency;
    }

    /** The day of the prices. */
    public LocalDate pricedOn() {
        return pricedOn;
    }

    /** The day of the answer; the day of the prices where nobody says. */
    public LocalDate today() {
        return today;
    }

    public Labour labour() {
        return labour;
    }

    /** What the shop puts on its documents. */
    public Stationery stationery() {
        return stationery;
    }

    /** What the shop calls its suppliers, and which of them it is itself. */
    public SupplierNames suppliers() {
        return suppliers;
    }

    /** Name -> what a machine is to do, in the order in which the shop lists them. */
    public Map<String, Workload> workloads() {
        return workloads;
    }

    /** What the shop holds itself to where a request says nothing else. */
    public House house() {
        return house;
    }

    public Map<String, Double> throughputFactors() {
        return throughputFactors;
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
        return ofEnclosures.contains(sku);
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
        return Collections.unmodifiableCollection(parts.values());
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
        return Optional.ofNullable(parts.get(sku));
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
        return BigDecimal.valueOf(minor, Math.max(0, currency.getDefaultFractionDigits()));
    }
}
