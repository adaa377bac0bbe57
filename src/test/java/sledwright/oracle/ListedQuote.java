package sledwright.oracle;

import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import sledwright.domain.Objective;
import sledwright.domain.Request;

/**
 * A small quote of which every build can be listed.
 *
 * @param fewer whether fewer machines would do
 * @param held  a part that one machine at least must hold
 */
record ListedQuote(RandomCase that, boolean fewer, Optional<String> held) implements Listed<ListedQuote> {

    @Override
    public ListedQuote with(Request other) {
        return new ListedQuote(that.with(other), fewer, held);
    }

    @Override
    public ListedQuote with(RandomCase other) {
        return new ListedQuote(other, fewer, held);
    }

    @Override
    public ListedQuote ofFewer() {
        return new ListedQuote(that, true, held);
    }

    @Override
    public String text() {
        return held.map(sku -> "with " + sku + ": ").orElse("") + that.text();
    }

    @Override
    public OptionalLong least() {
        return OptionalLong.of(IntStream.rangeClosed(fewer ? 1 : request().machines(), request().machines())
                .mapToLong(this::least).min().orElseThrow());
    }

    private long least(int machines) {
        RandomCase cheapest = that.with(request().withMachines(machines).withObjective(Objective.CHEAPEST));
        return held.map(sku -> BruteForce.allHolding(sku, cheapest)).orElseGet(() -> BruteForce.all(cheapest)).stream()
                .mapToLong(Candidate::price).min().orElse(Long.MAX_VALUE);
    }
}
