/** A verdict on a build as text, JSON and CSV. */
package sledwright.report.check;
