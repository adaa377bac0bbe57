/** What a catalogue holds, as text, JSON and CSV. */
package sledwright.report.catalog;
