package sledwright.generator;

import java.util.ArrayList;
import java.util.List;
import sledwright.domain.Request;

/**
 * Walks up from the best build and keeps those that are better, by the request's step, than each kept before in some figure.
 *
 * <p>The builds that would still be kept fill a union of boxes of figures, the open zones. The next alternative is the best
 * of the zones' best builds; keeping it splits each zone that it does not already lie below. So no frontier is ever built.
 */
final class Walk {

    private final Request request;
    private final Query query;
    private final Ranking ranking;

    Walk(Request request, Query query, Ranking ranking) {
        this.request = request;
        this.query = query;
        this.ranking = ranking;
    }

    /**
     * The ranked builds.
     *
     * @param first  the answer for everything, with what it leaves open
     * @param doubts whether every further build is the next of the walk
     */
    record Path(List<Combination> builds, Query.Answer first, Doubts doubts) {
    }

    private record Open(Zone zone, Query.Answer answer) {
    }

    Path walk() {
        Query.Answer first = query.best(Zone.EVERYTHING);
        List<Combination> kept = new ArrayList<>();
        List<Open> open = List.of(new Open(Zone.EVERYTHING, first));
        List<Doubts> doubts = new ArrayList<>(List.of(first.doubts()));
        while (kept.size() < request.alternatives()) {
            Combination next = open.stream().map(zone -> zone.answer.best()).filter(best -> best != null).min(ranking).orElse(null);
            if (next == null) {
                break;
            }
            kept.add(next);
            // Dealt better, such a build may be lighter than it is ranked.
            doubts.add(Query.slack(next.frame(), next.point()) == 0 ? Doubts.NONE : Doubts.of(Doubts.Cause.SHARING));
            if (kept.size() < request.alternatives()) {
                open = split(open, next);
                open.forEach(zone -> doubts.add(zone.answer.doubts()));
            }
        }
        return new Path(kept, first, Doubts.ofAll(doubts));
    }

    private List<Open> split(List<Open> open, Combination kept) {
        List<Zone> zones = new ArrayList<>();
        for (Open old : open) {
            for (Zone part : old.zone.beyond(kept, request.step())) {
                // A zone whose builds are all better than the kept one anyway comes out unchanged and swallows its parts.
                if (zones.stream().noneMatch(part::isWithin)) {
                    zones.removeIf(zone -> zone.isWithin(part));
                    zones.add(part);
                }
            }
        }
        return zones.stream().map(zone -> new Open(zone, answer(zone, open))).toList();
    }

    /** The best build of a zone: that of the zone it was cut from, where it still lies inside. */
    private Query.Answer answer(Zone zone, List<Open> before) {
        for (Open old : before) {
            if (zone.isWithin(old.zone) && old.answer.isFirst() && (old.answer.best() == null || zone.contains(old.answer.best()))) {
                return old.answer;
            }
        }
        return query.best(zone);
    }
}
