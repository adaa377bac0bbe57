package sledwright.mail;

/**
 * One key of a request that a mail asks for.
 *
 * @param key    as a request has it, such as {@code require.cores}; an entry of a list has its number in it
 * @param value  as a request has it
 * @param words  of the mail that it comes from
 * @param remark what was worked out from them; empty: they say it as it is
 */
public record MailWish(String key, String value, String words, String remark) {
}
