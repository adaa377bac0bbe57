package sledwright.planner.allot;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The ways to keep each promise that are known so far. Promises that are alike share theirs. */
final class FillingPool {

    private final Map<Promise.Kind, List<Filling>> byKind = new HashMap<>();

    /** The same lists by promise: what a promise is like takes long to compare. */
    private final Map<Promise, List<Filling>> known = new HashMap<>();

    List<Filling> of(Promise promise) {
        return known.computeIfAbsent(promise, one -> byKind.computeIfAbsent(one.kind(), kind -> new ArrayList<>()));
    }

    /** Whether it was not known. */
    boolean add(Promise promise, Filling filling) {
        List<Filling> ways = of(promise);
        return ways.stream().noneMatch(filling::isLike) && ways.add(filling);
    }
}
