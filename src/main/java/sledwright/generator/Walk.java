package sledwright.generator;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
    private final Map<Zone, Query.ZoneSearch> searches = new HashMap<>();

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

    /** @param answer the best build of the zone, or one that none of the zone comes before */
    private record Open(Zone zone, Query.Answer answer) {
    }

    Path walk() {
        Query.Answer first = query.best(Zone.EVERYTHING);
        List<Combination> kept = new ArrayList<>();
        List<Open> open = List.of(new Open(Zone.EVERYTHING, first));
        List<Doubts> doubts = new ArrayList<>(List.of(first.doubts()));
        while (kept.size() < request.alternatives()) {
            Combination next = best(open);
            if (next == null) {
                break;
            }
            kept.add(next);
            // Dealt better, such a build may be lighter than it is ranked.
            doubts.add(Query.slack(next.frame(), next.point()) == 0 ? Doubts.NONE : Doubts.of(Doubts.Cause.SHARING));
            if (kept.size() < request.alternatives()) {
                open = answered(split(open, next), open);
                open.forEach(zone -> doubts.add(zone.answer.doubts()));
            }
        }
        return new Path(kept, first, Doubts.ofAll(doubts));
    }

    private Combination best(List<Open> open) {
        return open.stream().map(zone -> zone.answer.best()).filter(best -> best != null).min(ranking).orElse(null);
    }

    private List<Zone> split(List<Open> open, Combination kept) {
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
        return zones;
    }

    /** Zones whose best build is known first; of the others no more is asked than what comes before the best of those. */
    private List<Open> answered(List<Zone> zones, List<Open> before) {
        List<Open> answered = new ArrayList<>();
        List<Zone> unknown = new ArrayList<>();
        for (Zone zone : zones) {
            known(zone, before, null).ifPresentOrElse(answer -> answered.add(new Open(zone, answer)), () -> unknown.add(zone));
        }
        for (Zone zone : unknown) {
            Combination best = best(answered);
            answered.add(new Open(zone, known(zone, before, best)
                    .orElseGet(() -> searches.computeIfAbsent(zone, query::in).before(best))));
        }
        return answered;
    }

    /** What is known of the zone that one was cut from, where the best build lies inside or does not come before another. */
    private Optional<Query.Answer> known(Zone zone, List<Open> before, Combination other) {
        return before.stream().filter(old -> zone.isWithin(old.zone) && old.answer.isFirst() && (old.answer.best() == null
                || zone.contains(old.answer.best()) || other != null && ranking.compare(other, old.answer.best()) <= 0))
                .map(Open::answer).findFirst();
    }
}
