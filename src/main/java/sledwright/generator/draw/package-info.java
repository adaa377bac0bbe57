/** What numbers of modules cost and draw over all lots, and how their units are dealt to machines. */
package sledwright.generator.draw;
