/** A quote as text, JSON and CSV. */
package sledwright.report.quote;
