package sledwright.mail;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A mail of the test's own files, with what should be understood of it.
 *
 * @param expected as {@code key = value}
 * @param listed   words that must be listed as not understood
 */
record WrittenMail(String file, String number, String text, Set<String> expected, List<String> listed) {

    private static final Path FOLDER = Path.of("src/test/resources/mails");

    static List<WrittenMail> of(String file) {
        try {
            List<WrittenMail> mails = new ArrayList<>();
            String[] entries = Files.readString(FOLDER.resolve(file)).split("(?m)^### ");
            for (int i = 1; i < entries.length; i++) {
                List<String> lines = entries[i].lines().toList();
                String text = lines.stream().skip(1).filter(line -> !line.startsWith("=> ") && !line.startsWith("?? ")).collect(Collectors.joining("\n"));
                Set<String> expected = new TreeSet<>();
                for (String line : lines) {
                    if (line.startsWith("=> ")) {
                        String[] pair = line.substring(3).split(" = ");
                        boolean list = Set.of("limit.conditions", "platforms", "use", "forbid").contains(pair[0]);
                        for (String value : list ? pair[1].split(" ") : new String[] {pair[1]}) {
                            expected.add(pair[0] + " = " + value.replaceFirst("(\\.\\d*?)0+$", "$1").replaceFirst("\\.$", ""));
                        }
                    }
                }
                mails.add(new WrittenMail(file, lines.get(0).strip(), text.strip(), expected,
                        lines.stream().filter(line -> line.startsWith("?? ")).map(line -> line.substring(3)).toList()));
            }
            return mails;
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** What is understood of it, in the same form; the names of volumes are nobody's wish. */
    static Set<String> found(MailReading reading) {
        return reading.wishes().stream().filter(wish -> !wish.key().endsWith(".name")).map(wish -> wish.key() + " = " + wish.value())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** Those words that should be listed and are not. */
    List<String> silent(MailReading reading) {
        String all = reading.unread().stream().map(UnreadWords::words).collect(Collectors.joining(" "));
        return listed.stream().filter(words -> !List.of(all.split("[^\\p{L}\\p{N}$%.']+")).stream().map(WrittenMail::bare).toList()
                .containsAll(List.of(words.split("[^\\p{L}\\p{N}$%.']+")).stream().map(WrittenMail::bare).filter(word -> !word.isEmpty() && !word.equals("or")).toList())).toList();
    }

    private static String bare(String word) {
        return word.replaceAll("^[.']+|[.']+$", "");
    }
}
