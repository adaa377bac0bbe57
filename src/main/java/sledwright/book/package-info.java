/**
 * The book of quotes: what was asked and answered, what became of it, and what is promised. {@link sledwright.book.Book} is the way in;
 * what lies beneath is in {@code book.store}. Nothing is ever searched while something is written: search, write if what was found still
 * stands, or search again.
 */
package sledwright.book;
