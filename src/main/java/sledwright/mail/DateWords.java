package sledwright.mail;

import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** Days of delivery, and days until then. */
final class DateWords implements MailRule {

    private static final String LAST = "limit.by";
    private static final List<String> MONTHS = List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");

    private static final List<String> ORDER = List.of("first", "second", "third", "fourth", "fifth", "sixth",
            "seventh", "eighth", "ninth", "tenth");
    private static final Pattern ISO = Forms.of("date.iso");
    private static final Pattern DOTTED = Forms.of("date.dotted");
    private static final Pattern SLASHED = Forms.of("date.slashed");
    private static final Pattern DAY_FIRST = Forms.of("date.day-first");
    private static final Pattern MONTH_FIRST = Forms.of("date.month-first");
    private static final Pattern NEXT = Forms.of("date.next");
    private static final Pattern ON_WEEKDAY = Forms.of("date.on-weekday");
    private static final Pattern TOMORROW = Forms.of("date.tomorrow");
    private static final Pattern END = Forms.of("date.end");
    private static final Pattern WORKING = Forms.of("date.working");
    private static final Pattern WITHIN = Forms.of("date.within");
    private static final Pattern OF_OTHER = Forms.of("date.of-other");
    private static final Pattern ANSWER = Forms.of("date.answer");
    private static final Pattern BESIDE = Forms.of("date.beside");

    private static final Pattern BEFORE = Forms.of("date.before");

    private final LocalDate today;

    DateWords(LocalDate today) {
        this.today = today;
    }

    @Override
    public void read(Passage passage, MailFindings findings) {
        passage.each(ISO, hit -> date(hit, findings));
        passage.each(DOTTED, hit -> date(hit, findings));
        passage.each(SLASHED, hit -> slashed(hit, findings));
        passage.each(DAY_FIRST, hit -> day(hit, findings));
        passage.each(MONTH_FIRST, hit -> day(hit, findings));
        passage.each(NEXT, hit -> {
            hit.take();
            findings.unread(hit.at(), hit.words(), "which day is the last?");
        });
        passage.each(ON_WEEKDAY, hit -> {
            DayOfWeek wanted = DayOfWeek.valueOf(hit.group("weekday").toUpperCase(Locale.ROOT));
            last(hit, today.with(TemporalAdjusters.next(wanted)), findings);
        });
        passage.each(TOMORROW, hit -> last(hit, today.plusDays(1), findings));
        passage.each(END, hit -> {
            LocalDate month = hit.has("month") ? next(monthOf(hit), 1) : today;
            LocalDate end = month.with(TemporalAdjusters.lastDayOfMonth());
            // The month that is now ends later in it, though its first day is over.
            boolean now = hit.has("month") && monthOf(hit) == today.getMonthValue();
            hit.take();
            hit.takeBeside(BESIDE);
            LocalDate last = now ? today.with(TemporalAdjusters.lastDayOfMonth()) : end;
            findings.wish(LAST, last.toString(), hit.at(), hit.words(), "the last day of it");
        });
        passage.each(WORKING, hit -> {
            hit.take();
            hit.takeBeside(BESIDE);
            findings.unread(hit.at(), hit.words(), "days count, working days do not; by which day?");
        });
        passage.each(WITHIN, hit -> {
            boolean other = hit.clauseHas(OF_OTHER) || ANSWER.matcher(hit.before()).find();
            hit.take();
            hit.takeBeside(BESIDE);
            if (other) {
                findings.unread(hit.at(), hit.words(), "is this the time of delivery?");
                return;
            }
            boolean weeks = hit.group("unit").startsWith("week");
            long days = hit.number("n").longValue() * (weeks ? 7 : 1);
            findings.wish("limit.lead_days", Long.toString(days), hit.at(), hit.words(), weeks ? "in days" : "");
        });
    }

    private void date(Passage.Hit hit, MailFindings findings) {
        valid(figure(hit, "y"), figure(hit, "m"), figure(hit, "d"))
                .ifPresentOrElse(day -> last(hit, day, findings), () -> noDay(hit, findings));
    }

    /** Some write the day first, some the month; only a figure above twelve, or two that are alike, say which it is. */
    private void slashed(Passage.Hit hit, MailFindings findings) {
        Optional<LocalDate> dayFirst = valid(figure(hit, "y"), figure(hit, "m"), figure(hit, "d"));
        Optional<LocalDate> monthFirst = valid(figure(hit, "y"), figure(hit, "d"), figure(hit, "m"));
        if (dayFirst.isPresent() && monthFirst.isPresent() && !dayFirst.equals(monthFirst)) {
            hit.take();
            hit.takeBeside(BESIDE);
            findings.unread(hit.at(), hit.words(), "%s or %s?".formatted(dayFirst.get(), monthFirst.get()));
        } else {
            dayFirst.or(() -> monthFirst).ifPresentOrElse(day -> last(hit, day, findings), () -> noDay(hit, findings));
        }
    }

    private void day(Passage.Hit hit, MailFindings findings) {
        boolean byName = hit.has("d");
        int day = byName ? figure(hit, "d") : ORDER.indexOf(hit.group("order")) + 1;
        int month = monthOf(hit);
        Optional<LocalDate> found = hit.has("y") ? valid(figure(hit, "y"), month, day)
                : valid(today.getYear(), month, day).filter(one -> !one.isBefore(today)).or(() -> valid(today.getYear() + 1, month, day));
        found.ifPresentOrElse(one -> last(hit, one, findings), () -> noDay(hit, findings));
    }

    private LocalDate next(int month, int day) {
        LocalDate found = LocalDate.of(today.getYear(), month, day);
        return found.isBefore(today) ? found.plusYears(1) : found;
    }

    private static int monthOf(Passage.Hit hit) {
        return MONTHS.indexOf(hit.group("month").substring(0, 3)) + 1;
    }

    private static int figure(Passage.Hit hit, String group) {
        return Integer.parseInt(hit.group(group));
    }

    private static Optional<LocalDate> valid(int year, int month, int day) {
        try {
            return Optional.of(LocalDate.of(year, month, day));
        } catch (DateTimeException none) {
            return Optional.empty();
        }
    }

    private static void noDay(Passage.Hit hit, MailFindings findings) {
        hit.take();
        findings.unread(hit.at(), hit.words(), "there is no such day");
    }

    private void last(Passage.Hit hit, LocalDate day, MailFindings findings) {
        boolean before = BEFORE.matcher(hit.words()).find();
        boolean said = (hit.has("by") || hit.words().endsWith("latest") || hit.clauseHas(BESIDE)) && !ANSWER.matcher(hit.before()).find();
        hit.take();
        hit.takeBeside(BESIDE);
        LocalDate last = before ? day.minusDays(1) : day;
        if (!said) {
            findings.unread(hit.at(), hit.words(), "is this the last day of delivery?");
        } else if (last.isBefore(today)) {
            findings.unread(hit.at(), hit.words(), "this day is over");
        } else {
            findings.wish(LAST, last.toString(), hit.at(), hit.words(), before ? "the day before it" : "");
        }
    }
}
