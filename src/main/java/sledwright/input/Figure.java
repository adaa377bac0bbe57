package sledwright.input;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text read as a number, or what keeps it from being one.
 *
 * @param value   the number; empty: see the problem
 * @param problem what would be right; empty when there is a value
 */
public record Figure(Optional<BigDecimal> value, String problem) {

    /** What is wrong with an amount that cannot be read. */
    public static final String NO_AMOUNT = "must be an amount, such as 1150.00";

    /** Longer figures are no prices or watts, and some take a computer hours to round. */
    private static final int MOST_CHARACTERS = 30;
    private static final int MOST_DIGITS = 18;

    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d{1,3})?");
    private static final Pattern AMOUNT = Pattern.compile("[0-9]{1,12}(\\.[0-9]{1,4})?");
    private static final Pattern COMMA = Pattern.compile("([+-]?\\d+),(\\d+)");
    private static final Pattern THOUSANDS_BY_POINT = Pattern.compile("[+-]?[1-9]\\d{0,2}(\\.\\d{3})+(,\\d+)?");

    /** What is no figure is looked at more closely; few runs come to that. */
    private static final class Wrong {

        private static final Pattern THOUSANDS_BY_COMMA = Pattern.compile("[+-]?[1-9]\\d{0,2}(,\\d{3})+(\\.\\d+)?");
        private static final Pattern WITH_UNIT = Pattern.compile("([+-]?\\d+(?:[.,]\\d+)?)\\s*([\\p{L}\\p{Sc}°%][^\\d]*)");
        /** Units of which files have another, so that the same figure would mean another amount. */
        private static final Pattern OTHER_UNIT = Pattern.compile(
                "(k|[kmtp]i?b|terabytes?|[mkt](w|hz|eur)|km|weeks?|months?|hours?|cm|ft|feet)", Pattern.CASE_INSENSITIVE);
        private static final Pattern AFTER_CURRENCY = Pattern.compile("\\p{Sc}\\s*([+-]?\\d+(?:[.,]\\d+)?)");
        private static final Pattern NOT_FINITE = Pattern.compile("[+-]?\\.?(nan|inf|infinity|∞)", Pattern.CASE_INSENSITIVE);
    }

    /** An amount of money as a person types it; empty: see {@link #NO_AMOUNT}. */
    public static Optional<BigDecimal> amount(String typed) {
        return AMOUNT.matcher(typed).matches() ? Optional.of(new BigDecimal(typed)) : Optional.empty();
    }

    /** Reads a figure with a decimal point or, where the file allows it, with a decimal comma. */
    public static Figure parse(String text, boolean decimalComma) {
        if (isDigits(text, !decimalComma)) {
            return new Figure(Optional.of(new BigDecimal(text)), "");
        }
        if (decimalComma && THOUSANDS_BY_POINT.matcher(text).matches()) {
            return problem("could be thousands or decimals in a file with decimal commas; write no separator of thousands, "
                    + "and decimals with a comma");
        }
        String figure = decimalComma && COMMA.matcher(text).matches() ? text.replace(',', '.') : text;
        if (figure.length() <= MOST_CHARACTERS && NUMBER.matcher(figure).matches()) {
            BigDecimal value = new BigDecimal(figure);
            boolean sane = Math.abs((long) value.scale()) <= MOST_DIGITS
                    && Math.abs((long) value.precision() - value.scale()) <= MOST_DIGITS;
            return sane ? new Figure(Optional.of(value), "") : problem("has too many digits");
        }
        return problem(whatIsWrong(text));
    }

    /** Digits, and among them one point where that is no sign of thousands: what nearly all figures are. */
    private static boolean isDigits(String text, boolean point) {
        int last = text.length() - 1;
        if (last < 0 || last >= MOST_DIGITS) {
            return false;
        }
        boolean wanted = point;
        for (int i = 0; i <= last; i++) {
            char next = text.charAt(i);
            if (next == '.' && wanted && i > 0 && i < last) {
                wanted = false;
            } else if (next < '0' || next > '9') {
                return false;
            }
        }
        return true;
    }

    private static Figure problem(String problem) {
        return new Figure(Optional.empty(), problem);
    }

    private static String whatIsWrong(String text) {
        if (Wrong.NOT_FINITE.matcher(text).matches()) {
            return "must be a finite number";
        }
        Matcher unit = Wrong.WITH_UNIT.matcher(text);
        if (unit.matches() && unit.group(2).equals("%") && text.length() <= MOST_CHARACTERS) {
            String share = new BigDecimal(unit.group(1).replace(',', '.')).movePointLeft(2).stripTrailingZeros().toPlainString();
            return "must be a number alone; write %s where percent are asked for, %s where a share is".formatted(unit.group(1), share);
        }
        if (unit.matches() && Wrong.OTHER_UNIT.matcher(unit.group(2)).matches()) {
            return "must be a number alone; %s is not the unit here, so work it out".formatted(unit.group(2));
        }
        if (!unit.matches()) {
            unit = Wrong.AFTER_CURRENCY.matcher(text);
        }
        if (unit.matches()) {
            return "must be a number alone; drop the unit and write " + unit.group(1);
        }
        if (Wrong.THOUSANDS_BY_COMMA.matcher(text).matches()) {
            return "must not separate thousands; write " + text.replace(",", "") + ", or decimals with a point";
        }
        Matcher comma = COMMA.matcher(text);
        if (comma.matches()) {
            return "must have a decimal point; write " + comma.replaceFirst("$1.$2");
        }
        return text.length() > MOST_CHARACTERS ? "is too long for a number" : "must be a number";
    }
}
