package sledwright.book;

/** What a customer who was taken out of the book had in it: quotes, whose figures stay, and links, of which nothing is left. */
public record Erased(int quotes, int links) {
}
