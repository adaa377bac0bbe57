package sledwright.input;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Spliterator;

/** Finds the known name that a mistyped one was meant to be, or says which names there are. */
public final class Nearest {

    /** Each search walks all names letter by letter, so a large file of nothing but unknown names stops getting hints at some point. */
    private static final long MOST_STEPS = 10_000_000;

    /** Nothing so long was meant to be a name. */
    private static final int LONGEST_NAME = 200;

    /** Letters of both names for each mistake: one in three is near. */
    private static final int LETTERS_PER_MISTAKE = 6;
    /** So much in one piece, from where a word begins, is no chance. */
    private static final int TELLING_RUN = 4;

    /** What fits into a message: the names altogether, and how many of more than that. */
    private static final int LONGEST_LIST = 200;
    private static final int EXAMPLES = 3;

    private final List<String> names;
    private final Map<String, String> hints = new HashMap<>();
    private long steps;

    /**
     * @param names in the order in which a message lists them, the first of which is meant where several are equally near; what has no
     *              order of its own is sorted, so that every run says the same
     */
    public Nearest(Collection<String> names) {
        this.names = names.spliterator().hasCharacteristics(Spliterator.ORDERED) ? List.copyOf(names) : names.stream().sorted().toList();
    }

    /**
     * The end of a message: {@code ", did you mean X?"}, or where nothing is near {@code "; known are X, Y"}; empty when nothing is known.
     */
    public String hint(String name) {
        if (steps > MOST_STEPS && !hints.containsKey(name)) {
            return "";
        }
        String near = near(name);
        return near.isEmpty() && !names.isEmpty() ? "; known are " + listed(names) : near;
    }

    /** The end of a message that lists the names itself: {@code ", did you mean X?"}; empty when nothing is near. */
    public String near(String name) {
        if (name.length() > LONGEST_NAME) {
            return "";
        }
        String known = hints.get(name);
        if (known != null) {
            return known;
        }
        if (steps > MOST_STEPS) {
            return "";
        }
        String hint = search(name);
        hints.put(name, hint);
        return hint;
    }

    /** Names as a message lists them; of many, some. */
    public static String listed(Collection<String> names) {
        List<String> shown = names.stream().map(Field::shown).toList();
        String all = String.join(", ", shown);
        return all.length() <= LONGEST_LIST || shown.size() <= EXAMPLES ? all
                : "%s and %s more".formatted(String.join(", ", shown.subList(0, EXAMPLES)), shown.size() - EXAMPLES);
    }

    private String search(String name) {
        String best = null;
        int least = Integer.MAX_VALUE;
        String given = name.toLowerCase(Locale.ROOT);
        for (String known : names) {
            String candidate = known.toLowerCase(Locale.ROOT);
            steps += 1 + (long) name.length() * Math.min(candidate.length(), LONGEST_NAME);
            int score = candidate.length() > LONGEST_NAME ? Integer.MAX_VALUE : score(given, candidate);
            if (score < least) {
                least = score;
                best = known;
            }
        }
        return best == null ? "" : ", did you mean " + best + "?";
    }

    /** The less, the nearer; the most where it cannot have been meant: too many letters are wrong, and too few stand together in both. */
    private static int score(String name, String candidate) {
        int distance = distance(name, candidate);
        int shared = longestShared(name, candidate);
        boolean mistyped = distance <= (name.length() + candidate.length() + 1) / LETTERS_PER_MISTAKE;
        boolean partly = shared >= TELLING_RUN && 2 * shared >= Math.min(name.length(), candidate.length())
                && 4 * shared >= Math.max(name.length(), candidate.length());
        return mistyped || partly ? distance - shared : Integer.MAX_VALUE;
    }

    /** Insertions, deletions, substitutions and swaps of neighbours that turn one name into the other. */
    static int distance(String one, String other) {
        int[] beforeLast = new int[other.length() + 1];
        int[] last = new int[other.length() + 1];
        int[] row = new int[other.length() + 1];
        for (int column = 0; column <= other.length(); column++) {
            row[column] = column;
        }
        for (int i = 1; i <= one.length(); i++) {
            int[] spare = beforeLast;
            beforeLast = last;
            last = row;
            row = spare;
            row[0] = i;
            for (int j = 1; j <= other.length(); j++) {
                int change = same(one, i - 1, other, j - 1) ? 0 : 1;
                row[j] = Math.min(Math.min(last[j], row[j - 1]) + 1, last[j - 1] + change);
                if (i > 1 && j > 1 && same(one, i - 1, other, j - 2) && same(one, i - 2, other, j - 1)) {
                    row[j] = Math.min(row[j], beforeLast[j - 2] + 1);
                }
            }
        }
        return row[other.length()];
    }

    /** The length of the longest run of characters with which words of both begin, so that {@code core_count} finds {@code cores}. */
    private static int longestShared(String one, String other) {
        int longest = 0;
        int[] last = new int[other.length() + 1];
        for (int i = 1; i <= one.length(); i++) {
            int[] row = new int[other.length() + 1];
            for (int j = 1; j <= other.length(); j++) {
                boolean goesOn = last[j - 1] > 0 || beginsWord(one, i - 1) && beginsWord(other, j - 1);
                row[j] = goesOn && same(one, i - 1, other, j - 1) ? last[j - 1] + 1 : 0;
                longest = Math.max(longest, row[j]);
            }
            last = row;
        }
        return longest;
    }

    private static boolean beginsWord(String name, int i) {
        return i == 0 || !Character.isLetterOrDigit(name.charAt(i - 1));
    }

    private static boolean same(String one, int i, String other, int j) {
        return one.charAt(i) == other.charAt(j);
    }
}
