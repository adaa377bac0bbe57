package sledwright.report.mail;

import java.util.List;
import sledwright.mail.MailReading;
import sledwright.mail.MailWish;
import sledwright.mail.UnreadWords;
import sledwright.report.text.Json;

/** What a customer's mail says, as JSON. */
public record MailJson(List<MailWish> wishes, List<UnreadWords> unread) {

    public static String of(MailReading reading) {
        return Json.of(new MailJson(reading.wishes(), reading.unread()));
    }
}
