package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.mail.BodyPart;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import jakarta.mail.internet.MimeUtility;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.Map;
import java.util.TimeZone;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.samples.Folders;

/** Letters to customers, and mails with them, read back as a mail program reads them. */
class MailsTest {

    private static final String POSSIBLE = "require: { cores: 16, memory_gb: 64 }\nlimit: { lead_days: 9 }\nalternatives: 3\n";

    @TempDir
    private Path folder;
    private Path shop;

    @BeforeEach
    void copyShop() throws IOException {
        shop = Folders.copy(Folders.SHOP, folder.resolve("shop"));
        Path file = shop.resolve("catalog.yaml");
        Files.writeString(file, Files.readString(file) + "document: { contact: [Telephone 0000, sales@reedmere.example], tax_percent: 19, valid_days: 10 }\n");
    }

    private byte[] bytes(String command, String format, String yaml, String... more) throws IOException {
        Path file = Files.writeString(folder.resolve("asked.yaml"), "kind: " + command + "\ncatalog: shop\n" + yaml);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        String[] arguments = new String[4 + more.length];
        System.arraycopy(new String[] {command, file.toString(), "--format", format}, 0, arguments, 0, 4);
        System.arraycopy(more, 0, arguments, 4, more.length);
        Run run = Run.into(out, Map.of(), false, arguments);
        assertThat(run.code()).as(run.err()).isIn(ExitCode.DONE, ExitCode.NO_VALID_BUILD);
        return out.toByteArray();
    }

    private static MimeMessage read(byte[] mail) {
        try {
            return new MimeMessage((Session) null, new ByteArrayInputStream(mail));
        } catch (MessagingException broken) {
            throw new AssertionError(broken);
        }
    }

    /** All that a reader sees of a mail: headers, text, and the text of its paper. */
    static String shown(byte[] mail) throws IOException {
        MimeMessage message = read(mail);
        try {
            MimeMultipart parts = (MimeMultipart) message.getContent();
            assertThat(parts.getCount()).isEqualTo(2);
            try (PDDocument paper = Loader.loadPDF(parts.getBodyPart(1).getInputStream().readAllBytes())) {
                return String.join("\n", Collections.list(message.getAllHeaderLines())) + "\n"
                        + new String(parts.getBodyPart(0).getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                        + new PDFTextStripper().getText(paper);
            }
        } catch (MessagingException broken) {
            throw new AssertionError(broken);
        }
    }

    @Test
    void aMailIsReadBackAsItWasMeant() throws Exception {
        MimeMessage mail = read(bytes("quote", "eml", "name: S\u00f8ndag/uge \u65e5\ncustomer: [M\u00f8ller & S\u00f8n, post@moeller.example]\n" + POSSIBLE));
        assertThat(mail.getFrom()[0].toString()).isEqualTo("Reedmere Stores <sales@reedmere.example>");
        assertThat(MimeUtility.decodeText(mail.getAllRecipients()[0].toString())).isEqualTo("M\u00f8ller & S\u00f8n <post@moeller.example>");
        assertThat(mail.getSubject()).isEqualTo("Quote: S\u00f8ndag/uge \u65e5");
        assertThat(mail.getSentDate().toInstant()).isEqualTo("2026-11-16T12:00:00Z");
        assertThat(mail.getContentLanguage()).containsExactly("en");
        MimeMultipart parts = (MimeMultipart) mail.getContent();
        BodyPart paper = parts.getBodyPart(1);
        assertThat(paper.getFileName()).isEqualTo("Quote S\u00f8ndag-uge \u65e5.pdf");
        assertThat(paper.getContentType()).isEqualTo("application/pdf");
        byte[] pdf = paper.getInputStream().readAllBytes();
        assertThat(new String(pdf, 0, 5, StandardCharsets.ISO_8859_1)).isEqualTo("%PDF-");
        assertThat(pdf).isEqualTo(bytes("quote", "pdf", "name: S\u00f8ndag/uge \u65e5\ncustomer: [M\u00f8ller & S\u00f8n, post@moeller.example]\n" + POSSIBLE));
        String letter = new String(parts.getBodyPart(0).getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(letter).contains("Dear M\u00f8ller & S\u00f8n,", "Total with VAT", "This quote is valid until 26 November 2026.", "Kind regards", "Reedmere Stores");
        assertThat(new String(bytes("quote", "eml", POSSIBLE), StandardCharsets.ISO_8859_1).lines()).allSatisfy(line -> assertThat(line.length()).isLessThan(999));
    }

    @Test
    void whoHasNoAddressIsNamedAllTheSame() throws Exception {
        String mail = new String(bytes("quote", "eml", "customer: \"Fenland, Survey\"\n" + POSSIBLE), StandardCharsets.ISO_8859_1);
        assertThat(mail).contains("To: \"Fenland, Survey\" :;");
        assertThat(read(mail.getBytes(StandardCharsets.ISO_8859_1)).getAllRecipients()).hasSize(1);
        assertThat(new String(bytes("quote", "eml", POSSIBLE), StandardCharsets.ISO_8859_1)).contains("To: undisclosed-recipients:;");
    }

    @Test
    void theSameQuestionGivesTheSameMailWhereverItIsAsked() throws IOException {
        byte[] mail = bytes("quote", "eml", POSSIBLE);
        TimeZone before = TimeZone.getDefault();
        try {
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Auckland"));
            assertThat(bytes("quote", "eml", POSSIBLE)).isEqualTo(mail);
        } finally {
            TimeZone.setDefault(before);
        }
        assertThat(bytes("quote", "eml", "customer: another\n" + POSSIBLE)).isNotEqualTo(mail);
        assertThat(bytes("order", "eml", "lines:\n  web: { machines: 2, require: { cores: 16 } }\n")).isEqualTo(bytes("order", "eml", "lines:\n  web: { machines: 2, require: { cores: 16 } }\n"));
    }

    /** Whatever a name holds, it begins no header and no part of its own. */
    @Test
    void noNameIsAHeader() throws Exception {
        Path file = shop.resolve("catalog.yaml");
        Files.writeString(file, Files.readString(file).replaceFirst("name: .*", "name: \"Shop\\r\\nBcc: all@evil.example\""));
        String evil = "\"x\\r\\nBcc: all@evil.example\\r\\n\\r\\n<b>\\u2028Cc: more@evil.example\\0\"";
        MimeMessage mail = read(bytes("quote", "eml", "name: %s\ncustomer: [%s, \"a@b.example\\r\\nBcc: c@evil.example\"]\n%s".formatted(evil, evil, POSSIBLE)));
        assertThat(Collections.list(mail.getAllHeaders()).stream().map(header -> header.getName()).collect(Collectors.toList()))
                .containsExactlyInAnyOrder("Date", "From", "To", "Message-ID", "Subject", "MIME-Version", "Content-Type", "Content-Language");
        assertThat(((MimeMultipart) mail.getContent()).getCount()).isEqualTo(2);
        assertThat(((MimeMultipart) mail.getContent()).getBodyPart(1).getFileName()).endsWith(".pdf").doesNotContain("\r", "\n", "/", "<");
    }

    @Test
    void lettersAreReadyToBePasted() throws IOException {
        for (String letter : new String[] {new String(bytes("quote", "text", "customer: Fenland Survey\n" + POSSIBLE, "--for", "customer"), StandardCharsets.UTF_8),
            new String(bytes("order", "text", "customer: Fenland Survey\ndelivery_charge: 7\nlines:\n  web: { machines: 2, require: { cores: 16 } }\n  more: { require: { cores: 999 } }\n", "--for", "customer"), StandardCharsets.UTF_8),
            new String(bytes("quote", "text", "require: { cores: 16 }\nlimit: { price: 1 }\n", "--for", "customer"), StandardCharsets.UTF_8)}) {
            assertThat(letter.lines()).allSatisfy(line -> assertThat(line.codePointCount(0, line.length())).as(line).isLessThanOrEqualTo(72));
            assertThat(letter).contains("You asked for", "Our reference: asked", "Kind regards\n\nReedmere Stores\n").doesNotContain("\u00a0");
        }
    }

    @Test
    void aShopThatSpeaksGermanWritesItsMailsSo() throws IOException {
        Path file = shop.resolve("catalog.yaml");
        Files.writeString(file, Files.readString(file).replace("valid_days: 10 }", "valid_days: 10, locale: de }"));
        String shown = shown(bytes("quote", "eml", "customer: Moorwerk\n" + POSSIBLE));
        assertThat(shown).contains("Content-Language: de", "Subject: Angebot: asked", "Guten Tag Moorwerk,", "Gew\u00fcnscht ist ein Rechner", "Mit freundlichen Gr\u00fc\u00dfen", "Unser Zeichen: asked");
        assertThat(shown(bytes("order", "eml", "lines:\n  web: { machines: 2, require: { cores: 16 } }\n"))).contains("Subject: Angebot zu einem Auftrag: asked", "Auf einen Blick");
    }

    @Test
    void aMailIsForTheCustomer() throws IOException {
        Files.writeString(folder.resolve("asked.yaml"), "kind: quote\ncatalog: shop\n" + POSSIBLE);
        Run run = Run.of("quote", folder.resolve("asked.yaml").toString(), "--format", "eml", "--for", "shop");
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err()).contains("--format eml is a mail to the customer, not for the shop.", "Maybe leave --for and --internal out.");
        assertThat(Run.of("quote", folder.resolve("asked.yaml").toString(), "--format", "eml", "--steps").err()).contains("--steps is not written as eml.");
    }
}
