package sledwright.mail;

import java.util.regex.Pattern;

/** Words that ask for nothing: greetings, thanks, and those that hold a sentence together. */
final class Courtesy {

    static final Pattern GREETING = Forms.of("courtesy.greeting");
    static final Pattern FAREWELL = Forms.of("courtesy.farewell");
    static final Pattern AFTERTHOUGHT = Forms.of("courtesy.afterthought");
    static final Pattern INSTEAD = Forms.of("courtesy.instead");
    static final Pattern PAST = Forms.of("courtesy.past");
    static final Pattern HEDGED = Forms.of("courtesy.hedged");

    /** Words that say that a clause means the contrary of what stands in it, or is in doubt. */
    static final Pattern DENIAL = Forms.of("courtesy.denial");

    private static final Pattern FILLER = Forms.of("courtesy.filler");

    private Courtesy() {
    }

    /** Whether a run of words says something that nobody has understood. */
    static boolean says(String small) {
        for (String word : small.replaceAll("[^\\p{L}\\p{N}'.,+%$\u20ac\u00a3-]", " ").split("\\s+")) {
            String bare = word.replaceAll("^[-'.,]+|[-'.,]+$", "");
            if (!bare.isEmpty() && !FILLER.matcher(bare).matches()) {
                return true;
            }
        }
        return false;
    }
}
