/** A customer's mail as wishes of a request, each with the words that it comes from, and whatever of it was not understood. */
package sledwright.mail;
