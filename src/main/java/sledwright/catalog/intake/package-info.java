/**
 * Suppliers' spreadsheets into tables of a catalogue: columns by a mapping, rows merged, the whole held to be sound before it is written.
 */
package sledwright.catalog.intake;
