package sledwright.domain;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;

/**
 * What a build must not go beyond, and the site it stands at; an absent figure limits nothing.
 *
 * @param price      all machines together, minor units; where their price with tax is limited, what that leaves
 * @param taxed      what they may cost with tax, which {@code price} follows from; empty: nothing is said of tax
 * @param powerW     load of one machine
 * @param leadDays   days until the last part arrives
 * @param by         the last day of delivery; the lesser of it and {@code leadDays} holds
 * @param conditions accepted conditions; empty: all
 */
public record Limits(OptionalLong price, Optional<TaxedPrice> taxed, OptionalDouble powerW, OptionalInt leadDays,
                     Optional<DeliverBy> by, Site site, Set<Condition> conditions) {

    public static final Limits NONE = new Limits(OptionalLong.empty(), OptionalDouble.empty(), OptionalInt.empty(),
            OptionalDouble.empty(), 0, OptionalDouble.empty(), Set.of());

    /** Limits without a last day of delivery and without a word on tax. */
    public Limits(OptionalLong price, OptionalDouble powerW, OptionalInt leadDays, OptionalDouble inletC, double altitudeM,
                  OptionalDouble mainsV, Set<Condition> conditions) {
        this(price, Optional.empty(), powerW, leadDays, Optional.empty(), new Site(inletC, altitudeM, mainsV), conditions);
    }

    public Limits {
        conditions = Set.copyOf(conditions);
    }

    public OptionalDouble inletC() {
        return site.inletC();
    }

    public double altitudeM() {
        return site.altitudeM();
    }

    public OptionalDouble mainsV() {
        return site.mainsV();
    }

    /** The same limits at another price, whatever the tax; empty: at any. */
    public Limits withPrice(OptionalLong most) {
        return new Limits(most, Optional.empty(), powerW, leadDays, by, site, conditions);
    }

    /** The same limits at another price with tax. */
    public Limits withTaxed(TaxedPrice other) {
        return new Limits(OptionalLong.of(other.mostNet()), Optional.of(other), powerW, leadDays, by, site, conditions);
    }

    /** The same limits with other days to wait; empty: any number. */
    public Limits withLeadDays(OptionalInt most) {
        return new Limits(price, taxed, powerW, most, by, site, conditions);
    }

    /** The same limits with another last day of delivery; empty: any. */
    public Limits withBy(Optional<DeliverBy> day) {
        return new Limits(price, taxed, powerW, leadDays, day, site, conditions);
    }

    /** The most days that the last part may take, whether asked as days or as a day; empty: any number. Below 0: none can come in time. */
    public OptionalInt mostDays() {
        if (by.isEmpty()) {
            return leadDays;
        }
        int days = by.get().days();
        return OptionalInt.of(leadDays.isPresent() ? Math.min(days, leadDays.getAsInt()) : days);
    }

    /** The same limits where parts may take as long as they do. */
    public Limits waiting() {
        return withLeadDays(OptionalInt.empty()).withBy(Optional.empty());
    }

    /** The same limits at another load; empty: any. */
    public Limits withPowerW(OptionalDouble most) {
        return new Limits(price, taxed, most, leadDays, by, site, conditions);
    }

    /** The same limits where the inlet air is of another temperature; empty: not known. */
    public Limits withInletC(OptionalDouble air) {
        return new Limits(price, taxed, powerW, leadDays, by, new Site(air, site.altitudeM(), site.mainsV()), conditions);
    }

    /** The same limits at another height above the sea. */
    public Limits withAltitudeM(double metres) {
        return new Limits(price, taxed, powerW, leadDays, by, new Site(site.inletC(), metres, site.mainsV()), conditions);
    }

    /** The same limits on other mains; empty: not known. */
    public Limits withMainsV(OptionalDouble volts) {
        return new Limits(price, taxed, powerW, leadDays, by, new Site(site.inletC(), site.altitudeM(), volts), conditions);
    }

    /** The same limits where other conditions are accepted; empty: all. */
    public Limits withConditions(Set<Condition> accepted) {
        return new Limits(price, taxed, powerW, leadDays, by, site, accepted);
    }

    /** Whether the site's mains are low line. */
    public boolean lowLine() {
        return site.lowLine();
    }
}
