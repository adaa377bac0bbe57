package sledwright.web.api;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Catalog;
import sledwright.input.Faults;
import sledwright.input.Source;
import sledwright.input.Value;
import sledwright.input.YamlReader;
import sledwright.mail.Mails;
import sledwright.report.text.Json;
import sledwright.web.http.RefusedException;

/** What a customer's mail says; the body has it under {@code mail}. */
final class MailQuestion {

    static final String PATH = "/api/mail";
    static final String WORDS = "What a customer's mail asks for, each wish with its words, and what of it was not understood.";
    static final List<OptionKey> KEYS = List.of(OptionKey.text("today",
            "Read it as on this day, such as 2026-11-18, from which \"by Thursday\" is counted."));

    private MailQuestion() {
    }

    static String answer(Source source, Catalog shop, Optional<LocalDate> today) {
        Faults faults = new Faults();
        Optional<Value.Group> body = YamlReader.read(source, faults);
        if (faults.size() > 0) {
            throw RefusedException.of(faults.all());
        }
        if (body.isPresent() && body.get().values().get("mail") instanceof Value.Scalar mail) {
            return Json.of(Mails.read(mail.text(), shop, today.orElseGet(LocalDate::now)));
        }
        throw RefusedException.of(400, "mail", "", "is missing: the text of the mail stands under this key");
    }
}
