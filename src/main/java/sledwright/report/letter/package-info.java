/** Mails as files: written, never sent. Nothing here knows what a mail is about. */
package sledwright.report.letter;
