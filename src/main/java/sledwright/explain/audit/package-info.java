/** What is odd about a catalogue without being a fault. */
package sledwright.explain.audit;
