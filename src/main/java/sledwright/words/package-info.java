/** Lists, numbers and beginnings of sentences. */
package sledwright.words;
