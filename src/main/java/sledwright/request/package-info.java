/**
 * A request file, with what the command line overrides, read and resolved against a catalogue.
 */
package sledwright.request;
