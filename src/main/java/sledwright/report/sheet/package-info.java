/** The bench sheet: what to pick, where it goes, the order of the work, and what the machine must show at its first start. */
package sledwright.report.sheet;
