package sledwright.desk.view;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import sledwright.domain.Catalog;
import sledwright.domain.Discount;
import sledwright.domain.Stationery;

/**
 * What a customer pays for all machines, in units of the currency.
 *
 * @param price   what parts, labour and licences come to
 * @param percent of the price that is taken off; empty where none is
 * @param agreed  whether the net amount was agreed, whatever the price
 * @param net     what is paid before tax
 * @param tax     empty where the shop names none
 */
public record Payment(BigDecimal price, Optional<BigDecimal> percent, boolean agreed, BigDecimal net, Optional<Tax> tax) {

    /**
     * A tax on what is paid.
     *
     * @param amount rounded half up to a coin
     */
    public record Tax(String name, BigDecimal percent, BigDecimal amount) {
    }

    /** @param price minor units */
    public static Payment of(long price, Discount discount, Catalog shop) {
        BigDecimal net = shop.amount(discount.net(price));
        Stationery papers = shop.stationery();
        return new Payment(shop.amount(price), discount.percent(), discount.agreed().isPresent(), net, papers.tax().percent().map(percent ->
                new Tax(papers.tax().name(), percent, net.multiply(percent).movePointLeft(2).setScale(net.scale(), RoundingMode.HALF_UP))));
    }

    /** Whether something else than the price is paid. */
    public boolean isChanged() {
        return percent.isPresent() || agreed;
    }

    /** What is added to the price; below 0: what is taken off it. */
    public BigDecimal change() {
        return net.subtract(price);
    }

    /** What is to be paid with tax, where there is one. */
    public BigDecimal gross() {
        return net.add(tax.map(Tax::amount).orElse(BigDecimal.ZERO));
    }
}
