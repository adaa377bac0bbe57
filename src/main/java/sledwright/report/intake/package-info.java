/** What spreadsheets do to a catalogue, and how two catalogues differ: text, JSON, CSV and workbooks. */
package sledwright.report.intake;
