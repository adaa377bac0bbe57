/** The bench sheet: what to pick, where it goes, in which order hands work, and what the machine must show at its first start. */
package sledwright.report.sheet;
