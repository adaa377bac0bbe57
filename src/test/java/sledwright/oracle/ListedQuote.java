package sledwright.oracle;

import java.util.OptionalLong;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import sledwright.domain.Objective;
import sledwright.domain.Request;

/**
 * A small quote of which every build can be listed.
 *
 * @param fewer whether fewer machines would do
 */
record ListedQuote(RandomCase that, boolean fewer) implements Listed<ListedQuote> {

    @Override
    public ListedQuote with(Request other) {
        return new ListedQuote(that.with(other), fewer);
    }

    @Override
    public ListedQuote with(RandomCase other) {
        return new ListedQuote(other, fewer);
    }

    @Override
    public ListedQuote ofFewer() {
        return new ListedQuote(that, true);
    }

    @Override
    public String text() {
        return that.text();
    }

    @Override
    public OptionalLong least() {
        return OptionalLong.of(IntStream.rangeClosed(fewer ? 1 : request().machines(), request().machines())
                .mapToLong(machines -> BruteForce.all(that.with(request().withMachines(machines).withObjective(Objective.CHEAPEST))).stream()
                .mapToLong(Candidate::price).min().orElse(Long.MAX_VALUE)).min().orElseThrow());
    }
}
