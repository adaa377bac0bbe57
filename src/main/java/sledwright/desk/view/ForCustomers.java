package sledwright.desk.view;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import sledwright.desk.view.OrderView.Contents;
import sledwright.desk.view.OrderView.Filled;
import sledwright.desk.view.OrderView.Group;
import sledwright.desk.view.OrderView.Housed;
import sledwright.desk.view.OrderView.Later;
import sledwright.desk.view.OrderView.Shortage;
import sledwright.explain.Explanation;
import sledwright.explain.conflict.Conflict;
import sledwright.rules.stock.InStock;
import sledwright.words.Sentence;

/**
 * Answers without what is the shop's alone: suppliers, lots, costs, what lies in stock, and what each supplier charges. What a renderer is
 * not given it cannot show, in whatever format.
 */
public final class ForCustomers {

    private ForCustomers() {
    }

    public static QuoteView of(QuoteView view) {
        return new QuoteView(view.topic(), view.objective(), view.proof(), each(view.alternatives(), some -> new QuoteView.Alternative(
                some.rank(), of(some.build()), some.mark(), some.difference(), some.reasons(), some.weighed(), some.sale().forCustomers())),
                of(view.explanation()), new QuoteView.Outlook(view.outlook().moreWork(), view.outlook().tooMany(), Optional.empty()),
                view.day().forCustomers());
    }

    public static CompareView of(CompareView view) {
        return new CompareView(view.topic(), view.scope(), view.proof(), view.curves(), each(view.builds(), ForCustomers::of),
                view.together(), view.day().forCustomers());
    }

    public static OrderView of(OrderView view) {
        return new OrderView(view.topic(), view.proof(), view.cost(), view.sale().forCustomers(), of(view.contents()),
                view.shortage().map(ForCustomers::of), view.day().forCustomers());
    }

    private static Contents of(Contents some) {
        return new Contents(each(some.lines(), ForCustomers::of), each(some.enclosures(), housed -> new Housed(housed.number(),
                housed.filled(), housed.sleds(), housed.price(), of(housed.lines()))), of(some.picks()), List.of(), List.of());
    }

    /** Neither how many suppliers there would be nor what stands in stock is shown, but that no enclosure feeds a sled is. */
    private static Shortage of(Shortage lack) {
        return new Shortage(lack.most(), lack.looked(), lack.causes().stream().filter(OrderView.Cause::isOfMachines).toList(), List.of(),
                lack.later().map(later -> new Later(later.price(), later.leadDays(), of(later.purchases()))));
    }

    private static Filled of(Filled line) {
        return new Filled(line.line(), line.missing(), line.price(),
                each(line.builds(), group -> new Group(group.number(), of(group.build()), List.of())), line.why().map(ForCustomers::of));
    }

    public static UpgradeView of(UpgradeView view) {
        return new UpgradeView(view.topic(), view.proof(), view.standing(),
                view.upgrade().map(done -> new UpgradeView.Done(done.changes(), done.spent(), of(done.build()), done.work())),
                view.whole().map(whole -> new UpgradeView.Bought(of(whole.build()), whole.price(), whole.credit(), whole.spend(),
                        whole.extra())), of(view.explanation()), view.day().forCustomers());
    }

    private static BuildView of(BuildView build) {
        return new BuildView(build.price(), build.bare(), build.machines(), build.leadDays(), of(build.lines()));
    }

    /** Lines that differ only in their lots become one, which is there when the last of them is. */
    private static List<Line> of(List<Line> lines) {
        Map<List<Object>, Line> merged = new LinkedHashMap<>();
        for (Line line : lines) {
            Line told = new Line(line.kind(), line.sku(), line.description(), line.source().map(Line.Source::unnamed), line.quantity(),
                    line.unitPrice(), line.total());
            merged.merge(List.of(told.kind(), told.sku(), told.description(), told.unitPrice(),
                    told.source().map(source -> source.lot() + source.condition()).orElse("")), told, Line::plus);
        }
        return List.copyOf(merged.values());
    }

    /** What the lots hold is no customer's matter: only that it is not enough. */
    public static Explanation of(Explanation explanation) {
        return new Explanation(List.of(), explanation.conflicts().stream().map(ForCustomers::of).distinct().toList(),
                explanation.relaxations().stream().filter(way -> !way.keys().contains(InStock.STOCK)).toList(), List.of(),
                explanation.notes());
    }

    private static Conflict of(Conflict conflict) {
        if (!conflict.keys().contains(InStock.STOCK)) {
            return conflict;
        }
        List<Conflict.Member> asked = conflict.members().stream().filter(member -> !member.key().equals(InStock.STOCK)).toList();
        return new Conflict(asked, conflict.rules(), asked.isEmpty() ? Sentence.plain("We have no parts for such a machine.")
                : Sentence.of(asked.size() == 1 ? "%s cannot be had from what we have." : "%s cannot be had together from what we have.",
                        Sentence.list(asked.stream().map(Conflict.Member::words).toList())).capital());
    }

    private static <E> List<E> each(List<E> all, UnaryOperator<E> made) {
        return all.stream().map(made).toList();
    }
}
