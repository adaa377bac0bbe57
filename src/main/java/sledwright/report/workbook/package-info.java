/** Workbooks of sheets with columns and rows, for spreadsheets. */
package sledwright.report.workbook;
