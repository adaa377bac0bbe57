/** Lists, figures, counts and beginnings of sentences. */
package sledwright.words;
