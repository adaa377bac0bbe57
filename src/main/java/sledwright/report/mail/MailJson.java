package sledwright.report.mail;

import sledwright.mail.MailReading;
import sledwright.mail.MailWish;
import sledwright.mail.UnreadWords;
import sledwright.report.text.Json;

/** What a customer's mail says, as JSON. */
public final class MailJson {

    private MailJson() {
    }

    public static String of(MailReading reading) {
        return Json.document(out -> {
            out.writeArrayFieldStart("wishes");
            for (MailWish wish : reading.wishes()) {
                out.writeStartObject();
                out.writeStringField("key", wish.key());
                out.writeStringField("value", wish.value());
                out.writeStringField("words", wish.words());
                out.writeStringField("remark", wish.remark());
                out.writeEndObject();
            }
            out.writeEndArray();
            out.writeArrayFieldStart("unread");
            for (UnreadWords unread : reading.unread()) {
                out.writeStartObject();
                out.writeStringField("words", unread.words());
                out.writeStringField("why", unread.why());
                out.writeEndObject();
            }
            out.writeEndArray();
        });
    }
}
