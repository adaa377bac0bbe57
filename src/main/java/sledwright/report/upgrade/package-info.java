/** An upgrade as text, JSON and CSV. */
package sledwright.report.upgrade;
