/** What the book of quotes holds, as text, JSON and CSV. */
package sledwright.report.book;
