package sledwright.words;

import java.math.BigDecimal;

/** A figure, which languages write with other signs for its decimals. */
public record Measure(BigDecimal figure) implements Variable {

    @Override
    public String in(Manner manner) {
        return manner.measure(figure);
    }

    @Override
    public String toString() {
        return in(Manner.COMMAND_LINE);
    }
}
