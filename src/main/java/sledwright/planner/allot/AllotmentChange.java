package sledwright.planner.allot;

/** What happens while stock is being allotted. */
public sealed interface AllotmentChange {

    /** A lot has more or fewer units for promises than before. */
    record OfLot(LotName lot, int available) implements AllotmentChange {
    }

    /** The parts of a promise have been picked: it takes from now on what it kept before. */
    record Picked(String promise) implements AllotmentChange {
    }

    /** Nobody waits for the machines of a promise any more. */
    record Over(String promise) implements AllotmentChange {
    }
}
