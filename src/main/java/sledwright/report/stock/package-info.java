/** What stands on the shelf and at suppliers, part by part. */
package sledwright.report.stock;
