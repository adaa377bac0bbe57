package sledwright.cli;

import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Texts that were said, in which others can be looked for, whatever their blanks were filled with. */
final class Said {

    private static final Pattern BLANK = Pattern.compile("%(?:\\d+\\$)?[-#+ 0,(]*\\d*(?:\\.\\d+)?[a-zA-Z]|\\$\\{[^}]*}");
    private static final Pattern SPACE = Pattern.compile("[\\s\u00a0]+");
    private static final Pattern WORD = Pattern.compile("[a-z]{2,}");
    private static final String FILLED = ".{0,200}?";
    private static final String PERCENT = "\u0000";

    private final List<String> texts;
    /** Where each word stands. */
    private final Map<String, Set<Integer>> places = new HashMap<>();

    Said(Stream<String> texts) {
        this.texts = texts.map(Said::flat).distinct().toList();
        for (int place = 0; place < this.texts.size(); place++) {
            for (String word : words(this.texts.get(place))) {
                places.computeIfAbsent(word, unheard -> new LinkedHashSet<>()).add(place);
            }
        }
    }

    private static Set<String> words(String text) {
        return WORD.matcher(text).results().map(found -> found.group()).collect(Collectors.toSet());
    }

    /** One line in small letters: sentences break where there is room, and begin where they stand. */
    static String flat(String text) {
        return SPACE.matcher(text.replace("%n", " ")).replaceAll(" ").strip().toLowerCase(Locale.ROOT);
    }

    boolean has(String text) {
        List<String> parts = Arrays.stream(BLANK.split(flat(text.replace("%%", PERCENT)), -1))
                .map(part -> part.replace(PERCENT, "%")).toList();
        Pattern pattern = Pattern.compile(parts.stream().map(Pattern::quote).collect(Collectors.joining(FILLED)));
        return candidates(parts).mapToObj(texts::get).anyMatch(said -> parts.stream().allMatch(said::contains) && pattern.matcher(said).find());
    }

    /** The texts that have the rarest of the words that surely stand in them as they are: those at an end may go on. */
    private IntStream candidates(List<String> parts) {
        Set<Integer> fewest = null;
        for (String part : parts) {
            String inner = part.replaceFirst("^[a-z]+", "").replaceFirst("[a-z]+$", "");
            for (String word : words(inner)) {
                Set<Integer> having = places.getOrDefault(word, Set.of());
                fewest = fewest == null || having.size() < fewest.size() ? having : fewest;
            }
        }
        return fewest == null ? IntStream.range(0, texts.size()) : fewest.stream().mapToInt(Integer::intValue);
    }
}
