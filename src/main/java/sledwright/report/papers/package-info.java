/** An answer in every form in which the shop keeps it. */
package sledwright.report.papers;
