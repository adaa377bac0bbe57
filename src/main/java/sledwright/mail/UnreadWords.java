package sledwright.mail;

/**
 * Words of a mail that no wish was made of.
 *
 * @param why what would be needed; empty: the grammar does not know them
 */
public record UnreadWords(String words, String why) {
}
