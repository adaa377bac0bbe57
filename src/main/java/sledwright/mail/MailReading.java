package sledwright.mail;

import java.util.List;

/**
 * What a mail says.
 *
 * @param wishes in the order of the mail, no key twice but those that are lists
 * @param unread everything else that it says, beside greetings and words that ask for nothing
 */
public record MailReading(List<MailWish> wishes, List<UnreadWords> unread) {

    public MailReading {
        wishes = List.copyOf(wishes);
        unread = List.copyOf(unread);
    }
}
