/** Modules read from labels, as text, JSON and CSV. */
package sledwright.report.label;
