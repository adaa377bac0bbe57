package sledwright.mail;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;

/** Numbers in figures and in words, and forms of words that hold them. */
final class Numerals {

    private static final Map<String, Integer> SMALL = new LinkedHashMap<>();
    private static final Map<String, Integer> TENS = new LinkedHashMap<>();

    static {
        String[] small = {"one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen",
            "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"};
        for (int i = 0; i < small.length; i++) {
            SMALL.put(small[i], i + 1);
        }
        String[] tens = {"twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"};
        for (int i = 0; i < tens.length; i++) {
            TENS.put(tens[i], 20 + 10 * i);
        }
    }

    private static final String ONES = "(?:" + String.join("|", SMALL.keySet()) + ")";
    private static final String BELOW_HUNDRED = "(?:(?:" + String.join("|", TENS.keySet()) + ")(?:[- ]" + ONES + ")?|" + ONES + ")";
    private static final String IN_WORDS = "(?:(?:a|" + ONES + ") hundred(?:(?: and)? " + BELOW_HUNDRED + ")?|(?:a|" + BELOW_HUNDRED
            + ") thousand(?: " + ONES + " hundred)?|(?:half )?a dozen|" + BELOW_HUNDRED + ")";
    private static final String IN_FIGURES = "(?:\\d{1,3}(?:\\.\\d{3}){1,3},\\d{1,2}(?!\\d)"
            + "|\\d{1,3}(?:[,']\\d{3}){1,3}(?:\\.\\d{1,6})?|\\d{1,9}(?:[.,]\\d{1,6})?)(?:k(?!\\p{L}))?";

    /** A number stands by itself, or behind the x of a product. */
    static final String NUMBER = "(?:(?<![\\p{L}\\p{N}.,&&[^x]])" + IN_FIGURES + "(?![\\d])|\\b" + IN_WORDS + "\\b)";

    private static final Pattern POINT_BEFORE_THREE = Pattern.compile("\\d{1,3}\\.\\d{3}");
    /** Where a comma follows, the points can only divide thousands. */
    private static final Pattern WITH_POINTS = Pattern.compile("\\d{1,3}(\\.\\d{3})+,\\d+");
    private static final Pattern WITH_THOUSANDS = Pattern.compile("\\d{1,3}([,']\\d{3})+(\\.\\d+)?");

    private Numerals() {
    }

    /** A form in which {@code {n}} stands for a number that is called n; blanks may be line ends. */
    static Pattern form(String text) {
        String blanks = text.replace(" ", "\\s{1,3}").replace("\\s{1,3}?", "\\s{0,3}");
        return Pattern.compile(blanks.replaceAll("\\{([a-z])\\}", "(?<$1>" + NUMBER.replace("\\", "\\\\").replace("$", "\\$")
                .replace(" ", "\\\\s") + ")"));
    }

    /** Whether the point may divide thousands as well as be the decimal one. */
    static boolean isDoubtful(String written) {
        return POINT_BEFORE_THREE.matcher(written).matches();
    }

    static BigDecimal value(String written) {
        if (Character.isDigit(written.charAt(0))) {
            boolean thousands = written.endsWith("k");
            String figures = thousands ? written.substring(0, written.length() - 1) : written;
            String plain = WITH_THOUSANDS.matcher(figures).matches() ? figures.replaceAll("[,']", "")
                    : (WITH_POINTS.matcher(figures).matches() ? figures.replace(".", "") : figures).replace(',', '.');
            return new BigDecimal(plain).scaleByPowerOfTen(thousands ? 3 : 0);
        }
        int total = 0;
        int now = 0;
        for (String word : written.split("[-\\s]+")) {
            now = switch (word) {
                case "and" -> now;
                case "a" -> 1;
                case "half" -> 0;
                case "hundred" -> Math.max(1, now) * 100;
                case "dozen" -> written.startsWith("half") ? 6 : 12;
                default -> now + SMALL.getOrDefault(word, TENS.getOrDefault(word, 0));
            };
            if (word.equals("thousand")) {
                total = Math.max(1, now) * 1000;
                now = 0;
            }
        }
        return BigDecimal.valueOf(total + (long) now);
    }

    /** As a request has it: without zeros that say nothing. */
    static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }
}
