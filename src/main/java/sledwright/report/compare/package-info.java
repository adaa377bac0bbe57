/** A comparison as text, JSON, CSV, page, workbook and drawing. */
package sledwright.report.compare;
