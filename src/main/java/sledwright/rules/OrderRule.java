package sledwright.rules;

import sledwright.domain.Limits;

/** A rule that only a whole order keeps or breaks. */
public abstract class OrderRule extends Rule<Order> {

    protected OrderRule(String id, String law, String... answersTo) {
        super(id, law, answersTo);
    }

    /** Whether several lines that draw on one stock keep it together; otherwise each keeps it by itself, as its own request states it. */
    public boolean isOfAllLines() {
        return false;
    }

    /** The limits without its own, which are settled where an order offers a line no more than the line accepts. */
    public Limits settled(Limits limits) {
        return limits;
    }
}
