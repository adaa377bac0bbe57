package sledwright.report.letter;

import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.ContentDisposition;
import jakarta.mail.internet.InternetHeaders;
import jakarta.mail.internet.MimeBodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import jakarta.mail.internet.MimeUtility;
import jakarta.mail.internet.ParameterList;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;

/**
 * A mail with one paper, as the bytes of a file (RFC 5322, MIME). Equal mails are equal bytes, whenever and wherever they are made: the
 * date is the day of the answer, and identifier and boundary follow from what the mail says.
 *
 * @param language the tag of the language that it is in
 */
public record Mail(Correspondence from, Correspondence to, String subject, LocalDate day, String language, String text, Paper paper) {

    /** A PDF and what its file is called. */
    public record Paper(String name, byte[] pdf) {
    }

    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("EEE, d MMM uuuu HH:mm:ss xx", Locale.ENGLISH);
    /** The same day nearly everywhere on earth. */
    private static final LocalTime NOON = LocalTime.NOON;
    /** Reserved, so that no mail host has it (RFC 2606). */
    private static final String HOST = "sledwright.invalid";
    private static final String UTF_8 = StandardCharsets.UTF_8.name();

    /** A multipart whose boundary is given. */
    private static final class Multipart extends MimeMultipart {

        Multipart(String boundary) {
            contentType = "multipart/mixed;\r\n\tboundary=\"%s\"".formatted(boundary);
        }
    }

    /** A message whose identifier is given. */
    private static final class Message extends MimeMessage {

        private final String id;

        Message(String id) {
            super((Session) null);
            this.id = id;
        }

        @Override
        protected void updateMessageID() throws MessagingException {
            setHeader("Message-ID", "<%s@%s>".formatted(id, HOST));
        }
    }

    public byte[] bytes() {
        try {
            String id = digest();
            Message message = new Message(id);
            message.setHeader("Date", DATE.format(day.atTime(NOON).atOffset(ZoneOffset.UTC)));
            message.setHeader("From", MimeUtility.fold(6, from.header()));
            message.setHeader("To", MimeUtility.fold(4, to.header()));
            message.setSubject(Headline.of(subject), UTF_8);
            message.setContentLanguage(new String[] {language});
            // What encodes text with such a sign never holds it next to an underscore.
            Multipart parts = new Multipart("=_" + id);
            parts.addBodyPart(part("text/plain; charset=UTF-8", "quoted-printable", "inline", text.getBytes(StandardCharsets.UTF_8)));
            parts.addBodyPart(part("application/pdf", "base64", attachment(), paper.pdf()));
            message.setContent(parts);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            message.writeTo(out);
            return out.toByteArray();
        } catch (MessagingException impossible) {
            throw new IllegalStateException(impossible);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    private String attachment() {
        ContentDisposition attachment = new ContentDisposition();
        attachment.setDisposition("attachment");
        ParameterList parameters = new ParameterList();
        parameters.set("filename", fileName(), UTF_8);
        attachment.setParameterList(parameters);
        return attachment.toString();
    }

    /** Without what would lead into a folder or be refused by a file system. */
    private String fileName() {
        String plain = Headline.of(paper.name()).replaceAll("[\\\\/:*?\"<>|]", "-").replaceAll("^\\.+", "");
        int end = plain.offsetByCodePoints(0, Math.min(100, plain.codePointCount(0, plain.length())));
        return plain.substring(0, end).strip() + ".pdf";
    }

    private static MimeBodyPart part(String type, String encoding, String disposition, byte[] content)
            throws MessagingException, IOException {
        InternetHeaders headers = new InternetHeaders();
        headers.setHeader("Content-Type", type);
        headers.setHeader("Content-Transfer-Encoding", encoding);
        headers.setHeader("Content-Disposition", disposition);
        ByteArrayOutputStream encoded = new ByteArrayOutputStream();
        try (OutputStream out = MimeUtility.encode(encoded, encoding)) {
            out.write(content);
        }
        return new MimeBodyPart(headers, encoded.toByteArray());
    }

    /** What distinguishes the mail from every other. */
    private String digest() {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String said : List.of(from.header(), to.header(), subject, day.toString(), language, text, paper.name())) {
                digest.update(said.getBytes(StandardCharsets.UTF_8));
                digest.update((byte) 0);
            }
            return HexFormat.of().formatHex(digest.digest(paper.pdf()), 0, 16);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
