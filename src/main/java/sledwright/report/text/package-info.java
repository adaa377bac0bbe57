/** The forms of what is written: pages, tables and paragraphs on a terminal, JSON, comma-separated values. */
package sledwright.report.text;
