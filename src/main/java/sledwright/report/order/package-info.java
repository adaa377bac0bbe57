/** The answer to an order as text, JSON and CSV. */
package sledwright.report.order;
