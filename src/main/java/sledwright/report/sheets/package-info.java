/** Workbooks for spreadsheets: columns and rows in, bytes out. Text stays text, whatever it begins with. */
package sledwright.report.sheets;
