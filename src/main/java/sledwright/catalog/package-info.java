/**
 * A shop's folder read into a catalogue: rows and sections first, then what must agree between them, then the facts.
 */
package sledwright.catalog;
