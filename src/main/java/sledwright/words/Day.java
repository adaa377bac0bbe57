package sledwright.words;

import java.time.LocalDate;

/** A day of the calendar. */
public record Day(LocalDate date) implements Variable {

    @Override
    public String in(Manner manner) {
        return manner.day(date);
    }

    @Override
    public String toString() {
        return in(Manner.COMMAND_LINE);
    }
}
