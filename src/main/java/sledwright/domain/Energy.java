package sledwright.domain;

/**
 * What electricity costs a customer.
 *
 * @param years       how long the machines run
 * @param pricePerKwh minor units of the currency, which may be broken: a kWh can cost less than a coin
 * @param duty        mean share of the load that a machine carries, day and night, from 0 to 1
 */
public record Energy(double years, double pricePerKwh, double duty) {

    /** Always at full load. */
    public static final double DEFAULT_DUTY = 1;

    public Energy {
        if (!(years >= 0 && pricePerKwh >= 0 && duty >= 0 && duty <= 1)) {
            throw new IllegalArgumentException("years %s and price %s must not be below 0, duty %s from 0 to 1"
                    .formatted(years, pricePerKwh, duty));
        }
    }
}
