/** The parts of the page on which somebody asks: pieces of HTML that take the place of those before them. */
package sledwright.report.ask;
