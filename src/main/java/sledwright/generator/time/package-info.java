/** When a search has to give what it has. */
package sledwright.generator.time;
