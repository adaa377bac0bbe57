/** A stock plan as text, JSON, CSV, page and workbook. */
package sledwright.report.restock;
