package sledwright.mail;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sledwright.domain.Catalog;

/** Reads a customer's mail by a fixed grammar: whatever that does not know is listed, and nothing is guessed. */
public final class Mails {

    /** Letters that are read; what is longer is no mail. */
    public static final int LONGEST = 10_000;

    private static final int SHOWN = 60;
    private static final int LONGEST_SENTENCE = 1_200;
    private static final int WRAPPED_FROM = 50;
    private static final Pattern ENDS = Forms.of("mails.ends");
    private static final Pattern BLANKS = Pattern.compile("\\h++");
    private static final Pattern NO_WIDTH = Pattern.compile("\\p{Cf}");
    private static final Pattern EARLIER = Forms.of("mails.earlier");
    private static final Pattern ANY_FIGURE = Pattern.compile("\\d");
    private static final Pattern BULLET = Forms.of("mails.bullet");

    private final List<MailRule> rules;

    private Mails(Catalog shop, LocalDate today) {
        this.rules = List.of(new ChoiceWords(shop), new PartWords(shop), new DateWords(today), new MoneyWords(shop),
                new CardWords(), new ProcessorWords(), new MemoryWords(), new DriveWords(), new SiteWords(), new MachineWords());
    }

    /**
     * What a mail says.
     *
     * @param shop  whose part numbers and workloads count
     * @param today from which "by Thursday" is counted
     */
    public static MailReading read(String mail, Catalog shop, LocalDate today) {
        Mails reader = new Mails(shop, today);
        MailFindings findings = new MailFindings();
        Letter letter = Letter.of(mail.length() > LONGEST ? mail.substring(0, LONGEST) : mail);
        reader.read(letter.body(), 0, findings);
        if (!letter.farewell().isBlank()) {
            // A signature asks for nothing; where something behind the farewell does, it is read like all else.
            MailFindings behind = new MailFindings();
            reader.read(letter.farewell(), letter.body().length(), behind);
            if (!behind.isEmpty()) {
                reader.read(letter.farewell(), letter.body().length(), findings);
            }
        }
        letter.quoted().forEach(line -> findings.unread(line.at(), line.words(), "quoted from an earlier mail"));
        if (mail.length() > LONGEST) {
            String rest = mail.substring(LONGEST, Math.min(mail.length(), LONGEST + SHOWN)).strip();
            findings.unread(LONGEST, rest, "the mail is longer than %s letters".formatted(LONGEST));
        }
        return findings.whole();
    }

    private void read(String text, int place, MailFindings findings) {
        for (Passage passage : passages(text, place)) {
            read(passage, findings);
        }
    }

    private static List<Passage> passages(String text, int place) {
        List<Passage> passages = new ArrayList<>();
        Matcher ends = ENDS.matcher(text);
        int from = 0;
        while (from < text.length()) {
            int end = ends.find(from) ? ends.end() : text.length();
            for (int piece = from; piece < end; piece += LONGEST_SENTENCE) {
                passages.add(new Passage(text.substring(piece, Math.min(end, piece + LONGEST_SENTENCE)), place + piece));
            }
            from = end;
        }
        return passages;
    }

    private void read(Passage passage, MailFindings findings) {
        passage.skip(Courtesy.GREETING);
        if (passage.has(Courtesy.PAST)) {
            findings.unread(passage.at(), passage.whole(), "is about a machine that is there");
            return;
        }
        passage.each(Courtesy.HEDGED, hit -> {
            hit.take();
            findings.unread(hit.at(), hit.words(), "neither the least nor the most; which figure holds?");
        });
        passage.skip(Courtesy.INSTEAD);
        rules.forEach(rule -> rule.read(passage, findings));
        MemoryWords.bare(passage, findings);
        ChoiceWords.conditions(passage, findings);
        denials(passage, findings);
        passage.eachOpenRun((at, written, small) -> {
            if (Courtesy.says(small)) {
                findings.unread(at, written, "");
            }
        });
    }

    /** Where a word of denial is left that no rule has understood, its clause may mean the contrary: no wish is made of it. */
    private static void denials(Passage passage, MailFindings findings) {
        findings.found(found -> passage.holds(found.at())).forEach(found -> {
            if (Courtesy.DENIAL.matcher(passage.openClauseAt(found.at())).find()) {
                findings.withdraw(found);
                findings.unread(found.at(), passage.clauseAt(found.at()), "it says not; what is wanted?");
            }
        });
    }

    /** A mail taken apart. */
    private record Letter(String body, String farewell, List<Quoted> quoted) {

        /** A line that somebody has written before. */
        private record Quoted(int at, String words) {
        }

        static Letter of(String mail) {
            StringBuilder body = new StringBuilder();
            StringBuilder farewell = new StringBuilder();
            List<Quoted> quoted = new ArrayList<>();
            boolean over = false;
            boolean earlier = false;
            int before = 0;
            for (String written : NO_WIDTH.matcher(mail).replaceAll("").replace("\r\n", "\n").split("\n", -1)) {
                String line = BLANKS.matcher(written).replaceAll(" ");
                // What stands below a wish is the mail that it answers; without a wish above it is the wish that is handed on.
                earlier |= EARLIER.matcher(line).find() && ANY_FIGURE.matcher(body).find();
                if (earlier || line.startsWith(">") && !line.startsWith(">=")) {
                    String words = line.replaceAll("^[>\\s]+", "").strip();
                    if (!words.isEmpty()) {
                        quoted.add(new Quoted(body.length(), words));
                    }
                    continue;
                }
                over = !Courtesy.AFTERTHOUGHT.matcher(line).matches() && (over || Courtesy.FAREWELL.matcher(line).matches());
                StringBuilder part = over ? farewell : body;
                boolean wrapped = before >= WRAPPED_FROM && !line.isBlank() && Character.isLowerCase(line.strip().charAt(0));
                if (part.length() > 0) {
                    part.append(wrapped ? ' ' : '\n');
                }
                part.append(BULLET.matcher(line).replaceFirst(""));
                before = line.length();
            }
            return new Letter(body.toString(), farewell.toString(), quoted);
        }
    }
}
