package sledwright.planner.upgrade;

/**
 * What an upgrade comes to, minor units.
 *
 * @param parts   what is bought
 * @param labour  opening the machines and putting modules in
 * @param licence the customer's software for the machines as they then stand
 * @param credit  what the pulled parts fetch
 */
public record Spend(long parts, long labour, long licence, long credit) {

    /** What the customer pays in the end; below zero where the credit is more. */
    public long total() {
        return parts + labour + licence - credit;
    }
}
