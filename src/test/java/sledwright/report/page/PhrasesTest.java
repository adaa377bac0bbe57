package sledwright.report.page;

import static org.assertj.core.api.Assertions.assertThat;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import sledwright.domain.Condition;
import sledwright.domain.MemoryMode;
import sledwright.domain.Objective;
import sledwright.explain.Difference;
import sledwright.rules.target.Target;

/** The fixed texts of documents: the same keys in every language, each of them used, none missing. */
class PhrasesTest {

    private static final Path FILES = Path.of("src/main/resources/sledwright/report/page");
    private static final Pattern GAP = Pattern.compile("%(?:(\\d)\\$)?s");
    private static final Pattern KEY = Pattern.compile("(?:words\\.say\\(|words\\.counted\\([^\"]*, |say\\[)\"([a-z][\\w.-]*)\"");
    private static final Map<String, String> ENGLISH = Phrases.of(Locale.ENGLISH).all();

    private static List<Map<String, String>> languages() throws IOException {
        try (Stream<Path> files = Files.list(FILES)) {
            return files.map(file -> file.getFileName().toString()).filter(name -> name.matches("messages_\\w+\\.properties"))
                    .map(name -> Phrases.of(Locale.forLanguageTag(name.replaceAll("messages_|\\.properties", ""))).all()).toList();
        }
    }

    private static String sources() throws IOException {
        StringBuilder all = new StringBuilder();
        for (Path root : List.of(Path.of("src/main/java/sledwright"), FILES)) {
            try (Stream<Path> files = Files.walk(root)) {
                for (Path file : files.filter(path -> path.toString().matches(".*\\.(java|ftlh)")).toList()) {
                    all.append(Files.readString(file)).append('\n');
                }
            }
        }
        return all.toString();
    }

    /** The gaps by the number of their value. */
    private static TreeSet<String> gaps(String text) {
        TreeSet<String> gaps = new TreeSet<>();
        GAP.matcher(text.replace("%%", "")).results().forEach(gap -> gaps.add(gap.group(1) == null ? String.valueOf(gaps.size() + 1) : gap.group(1)));
        return gaps;
    }

    @Test
    void everyLanguageHasEveryTextWithTheSameGaps() throws IOException {
        assertThat(languages()).isNotEmpty();
        for (Map<String, String> language : languages()) {
            assertThat(language.keySet()).containsExactlyElementsOf(ENGLISH.keySet());
            language.forEach((key, text) -> {
                assertThat(text).as(key).isNotBlank();
                assertThat(gaps(text)).as(key).isEqualTo(gaps(ENGLISH.get(key)));
            });
        }
    }

    /** A file of a language alone, without what the other has: a text that is missing would come in English unseen. */
    @Test
    void noTextIsTakenFromTheOtherLanguage() throws IOException {
        List<String> english = keys(FILES.resolve("messages.properties"));
        assertThat(keys(FILES.resolve("messages_de.properties"))).containsExactlyElementsOf(english);
        assertThat(english).doesNotHaveDuplicates();
    }

    private static List<String> keys(Path file) throws IOException {
        return Files.readAllLines(file).stream().filter(line -> !line.startsWith("#") && line.contains("=")).map(line -> line.substring(0, line.indexOf('='))).toList();
    }

    /** What stands in the way of a request, and what would be possible, is said by these; what the lots hold is not for customers. */
    private static List<String> sentences() throws IOException {
        List<Path> sources = new ArrayList<>(List.of(Path.of("src/main/java/sledwright/desk/view/ForCustomers.java"),
                Path.of("src/main/java/sledwright/desk/view/CompareView.java")));
        try (Stream<Path> files = Files.list(Path.of("src/main/java/sledwright/explain/conflict"))) {
            files.filter(file -> file.toString().matches(".*(Demands|Impossibility)\\.java")).forEach(sources::add);
        }
        List<String> said = new ArrayList<>();
        for (Path source : sources) {
            LITERAL.matcher(Files.readString(source)).results().map(found -> found.group(1)).filter(text -> text.contains(" ")
                    && !OTHERWISE.contains(text)).forEach(said::add);
        }
        String cards = Files.readString(Path.of("src/main/java/sledwright/rules/card/AskedCards.java"));
        LITERAL.matcher(cards.substring(cards.indexOf("static Sentence words("))).results().map(found -> found.group(1)).forEach(said::add);
        Target.ALL.stream().map(Target::noun).forEach(said::add);
        said.addAll(List.of("cores", "spare slots"));
        Arrays.stream(Condition.values()).map(Condition::label).forEach(said::add);
        Arrays.stream(MemoryMode.values()).map(MemoryMode::label).forEach(said::add);
        return said.stream().distinct().toList();
    }

    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");
    /** What only the shop reads, or what joins words. */
    private static final List<String> OTHERWISE = List.of(", ", "; ", "number of ", "The request forbids %s.",
            "Time ran out before every conflict and every way out was found.", "Not every conflict and every way out could be found.",
            "There are further conflicts or ways out; these are the first that were found.");

    /** Sentences are found by their words, so each has its own key, and no key is left of one that is no more said. */
    @Test
    void everySentenceThatACustomerReadsHasItsText() throws IOException {
        List<String> sentences = sentences();
        assertThat(sentences).hasSizeGreaterThan(100).allSatisfy(sentence -> assertThat(ENGLISH).as(sentence).containsKey(Wording.key(sentence)));
        assertThat(sentences.stream().map(Wording::key)).doesNotHaveDuplicates()
                .containsExactlyInAnyOrderElementsOf(ENGLISH.keySet().stream().filter(key -> key.startsWith("said.")).toList());
        for (String sentence : sentences) {
            assertThat(gaps(sentence)).as(sentence).isEqualTo(gaps(ENGLISH.get(Wording.key(sentence))));
        }
    }

    @Test
    void everyTextIsUsed() throws IOException {
        String sources = sources();
        List<String> unused = new ArrayList<>();
        for (String key : ENGLISH.keySet().stream().filter(key -> !key.startsWith("said.")).toList()) {
            String counted = key.replaceAll("\\.(one|many|none|internal|plain|time|taxed)$", "");
            boolean built = BUILT.stream().anyMatch(prefix -> key.startsWith(prefix) && sources.contains('"' + prefix + '"'));
            if (!built && !sources.contains('"' + key + '"') && !sources.contains('"' + counted + '"')) {
                unused.add(key);
            }
        }
        assertThat(unused).isEmpty();
    }

    /** What keys begin with that are put together. */
    private static final List<String> BUILT = List.of("asked.", "aim.", "change.", "condition.", "figure.", "mode.", "labour.", "licence.", "mark.", "compare.figure.",
            "link.wish.", "compare.cost.", "compare.by.", "compare.status.", "compare.term.", "compare.note.");

    @Test
    void noTextIsMissing() throws IOException {
        List<String> asked = new ArrayList<>(KEY.matcher(sources()).results().map(found -> found.group(1)).filter(key -> !key.endsWith(".")).toList());
        assertThat(asked).hasSizeGreaterThan(100);
        Arrays.stream(Objective.values()).forEach(aim -> asked.add("aim." + aim.name()));
        Arrays.stream(Condition.values()).forEach(condition -> asked.add("condition." + condition.label()));
        Arrays.stream(MemoryMode.values()).forEach(mode -> asked.add("mode." + mode.label()));
        Target.ALL.forEach(target -> asked.addAll(List.of("asked." + target.id(), "figure." + target.id())));
        Arrays.stream(Difference.Figure.values()).forEach(figure -> asked.addAll(List.of("change." + figure.name() + ".more", "change." + figure.name() + ".less")));
        Arrays.stream(Difference.Figure.values()).filter(figure -> !figure.each().isEmpty()).forEach(figure -> asked.add("change." + figure.name() + ".each"));
        assertThat(asked).allSatisfy(key -> assertThat(ENGLISH.keySet()).as(key).containsAnyOf(key, key + ".many"));
    }

    /** The process's own language plays no part, and a language without a file is answered in English. */
    @Test
    void whatHasNoFileIsEnglish() {
        assertThat(Phrases.of(Locale.FRANCE).say("terms")).isEqualTo("Terms");
        assertThat(Phrases.of(Locale.FRANCE).language()).isEqualTo(Locale.ENGLISH);
        assertThat(Phrases.of(Locale.forLanguageTag("de-AT")).say("terms")).isEqualTo("Bedingungen");
    }
}
