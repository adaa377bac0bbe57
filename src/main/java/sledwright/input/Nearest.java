package sledwright.input;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Finds the known name that is most like a mistyped one. */
public final class Nearest {

    /** Each search walks all names, so a large file of nothing but unknown names stops getting hints at some point. */
    private static final int MOST_COMPARISONS = 200_000;

    /** Nothing so long was meant to be a name. */
    private static final int LONGEST_NAME = 200;

    /** Times that a name may be longer than what was written for it. */
    private static final int LONGER = 4;

    private final List<String> names;
    private final Map<String, String> hints = new HashMap<>();

    public Nearest(Collection<String> names) {
        this.names = List.copyOf(names);
    }

    /** The end of a message: {@code ", did you mean X?"}; empty when nothing is known. */
    public String hint(String name) {
        if (name.length() > LONGEST_NAME) {
            return "";
        }
        String known = hints.get(name);
        if (known != null) {
            return known;
        }
        if (!hints.isEmpty() && (hints.size() + 1L) * names.size() > MOST_COMPARISONS) {
            return "";
        }
        String hint = search(name);
        hints.put(name, hint);
        return hint;
    }

    private String search(String name) {
        String best = null;
        int least = Integer.MAX_VALUE;
        for (String candidate : names) {
            if (candidate.length() > LONGER * name.length() + LONGER) {
                continue;
            }
            int score = distance(name, candidate) - longestShared(name, candidate);
            if (score < least) {
                least = score;
                best = candidate;
            }
        }
        return best == null ? "" : ", did you mean " + best + "?";
    }

    /** Insertions, deletions, substitutions and swaps of neighbours that turn one name into the other, whatever their case. */
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

    /** The length of the longest run of characters in both, so that {@code core_count} finds {@code cores}. */
    private static int longestShared(String one, String other) {
        int longest = 0;
        int[] last = new int[other.length() + 1];
        for (int i = 1; i <= one.length(); i++) {
            int[] row = new int[other.length() + 1];
            for (int j = 1; j <= other.length(); j++) {
                row[j] = same(one, i - 1, other, j - 1) ? last[j - 1] + 1 : 0;
                longest = Math.max(longest, row[j]);
            }
            last = row;
        }
        return longest;
    }

    private static boolean same(String one, int i, String other, int j) {
        return Character.toLowerCase(one.charAt(i)) == Character.toLowerCase(other.charAt(j));
    }
}
