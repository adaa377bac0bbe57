package sledwright.explain.steps;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.domain.CardKind;
import sledwright.domain.CardWish;
import sledwright.domain.Catalog;
import sledwright.domain.Equipment;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.domain.VolumeWish;
import sledwright.explain.ask.Extreme;
import sledwright.explain.ask.WhatIf;
import sledwright.explain.conflict.EquipmentDemands;
import sledwright.explain.conflict.FigureDemands;
import sledwright.rules.Order;
import sledwright.rules.card.AskedCards;
import sledwright.rules.storage.StorageCapacity;
import sledwright.rules.target.Target;

/** Something of which a request asks for so much, and could ask for a little more or less. */
interface AskedFigure {

    /**
     * What a request says of it.
     *
     * @param key   the request's key
     * @param name  which entry under the key is meant, where it holds several
     * @param unit  behind a number, with the space before it; empty where there is none
     * @param grain by how much two different figures differ at least
     * @param least how much is asked for
     */
    record Entry(String key, Optional<String> name, String unit, double grain, double least) {
    }

    Entry entry();

    /** What an order reaches. */
    double figure(Order order);

    /** The terms on which so much is asked for. */
    WhatIf asking(WhatIf terms, double least);

    /** The objective that makes most of it, where there is one. */
    default Optional<Objective> most() {
        return Optional.empty();
    }

    /**
     * The greatest figure that is possible.
     *
     * @param reached is possible
     * @param than    cannot
     * @param atLeast the figure of something that has at least so much; empty where nothing has
     */
    default double greatest(double reached, double than, DoubleFunction<OptionalDouble> atLeast) {
        return Extreme.greatest(reached, than, entry().grain(), atLeast);
    }

    /** All of a request. */
    static List<AskedFigure> of(Request request, Catalog catalog) {
        Stream<AskedFigure> targets = Target.ALL.stream().filter(target -> target.least(request.require()) > 0)
                .map(target -> new OfTarget(target, request));
        Stream<AskedFigure> volumes = request.equipment().volumes().stream().map(wish -> new OfVolume(wish, catalog));
        Stream<AskedFigure> cards = IntStream.range(0, request.equipment().cards().size()).mapToObj(index -> new OfCards(request, index));
        return Stream.of(targets, volumes, cards).flatMap(figures -> figures).toList();
    }

    /** A figure of the machine. */
    record OfTarget(Target target, Request request) implements AskedFigure {

        @Override
        public Entry entry() {
            return new Entry(target.key(), Optional.empty(), target.unit(), target.grain(), target.least(request.require()));
        }

        @Override
        public double figure(Order order) {
            return target.figure(order.figures());
        }

        @Override
        public WhatIf asking(WhatIf terms, double least) {
            return terms.with(target.asking(terms.request().require(), least));
        }

        @Override
        public Optional<Objective> most() {
            return FigureDemands.objective(target);
        }
    }

    /** What a volume holds at least; of nothing there is still the smallest at its level. */
    record OfVolume(VolumeWish wish, Catalog catalog) implements AskedFigure {

        private static final double MILLIONTH = 1e-6;

        @Override
        public Entry entry() {
            return new Entry(StorageCapacity.KEY, Optional.of(wish.name()), " GB", MILLIONTH, wish.usableGb());
        }

        @Override
        public double figure(Order order) {
            return order.kinds().stream().flatMap(build -> build.fitout().volumes().stream())
                    .filter(volume -> volume.name().equals(wish.name())).mapToDouble(volume -> volume.usableGb()).min().orElseThrow();
        }

        @Override
        public WhatIf asking(WhatIf terms, double least) {
            return EquipmentDemands.asking(terms, wish, least);
        }

        @Override
        public double greatest(double reached, double than, DoubleFunction<OptionalDouble> atLeast) {
            List<Double> sizes = EquipmentDemands.sizes(wish, than, catalog).stream().filter(gb -> gb > reached).toList();
            return Extreme.first(sizes, gb -> {
                OptionalDouble found = atLeast.apply(gb);
                return found.isPresent() ? Optional.of(found.getAsDouble()) : Optional.empty();
            }).orElse(reached);
        }
    }

    /** How many cards one entry asks for. */
    record OfCards(Request request, int index) implements AskedFigure {

        private CardWish wish() {
            return request.equipment().cards().get(index);
        }

        @Override
        public Entry entry() {
            return new Entry(AskedCards.KEY, wish().sku().or(() -> wish().kind().map(CardKind::label)), "", 1, wish().count());
        }

        @Override
        public double figure(Order order) {
            List<CardWish> asked = order.request().equipment().cards();
            return asked.size() < request.equipment().cards().size() ? 0 : asked.get(index).count();
        }

        @Override
        public WhatIf asking(WhatIf terms, double least) {
            Equipment before = request.equipment();
            List<CardWish> cards = new ArrayList<>(before.cards());
            cards.remove(index);
            if (least > 0) {
                cards.add(index, wish().with((int) Math.ceil(least)));
            }
            return terms.with(terms.request().withEquipment(new Equipment(before.volumes(), cards, before.extras(), before.enclosure())));
        }
    }
}
