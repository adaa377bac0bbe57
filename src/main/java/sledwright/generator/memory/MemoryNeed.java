package sledwright.generator.memory;

import java.util.List;
import sledwright.domain.Limits;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.generator.keep.Content;

/** What one request asks of its memory where others share a market with it. */
public final class MemoryNeed {

    private final Requirements require;
    private final Limits limit;
    private final boolean everyWeight;
    private final Content content;

    private MemoryNeed(Requirements require, Limits limit, boolean everyWeight) {
        this.require = require;
        this.limit = limit;
        this.everyWeight = everyWeight;
        content = new Content(List.of(require.memoryGb(), require.spareSlots(), require.mode(), limit.price(), everyWeight));
    }

    /** @param everyWeight whether a heavier population may come before a lighter one that is as good and as cheap */
    public static MemoryNeed of(Request request, boolean everyWeight) {
        return new MemoryNeed(request.require(), Limits.NONE.withPrice(request.limit().price()), everyWeight);
    }

    Requirements require() {
        return require;
    }

    Limits limit() {
        return limit;
    }

    boolean everyWeight() {
        return everyWeight;
    }

    @Override
    public boolean equals(Object other) {
        return this == other || other instanceof MemoryNeed need && content.equals(need.content);
    }

    @Override
    public int hashCode() {
        return content.hashCode();
    }
}
