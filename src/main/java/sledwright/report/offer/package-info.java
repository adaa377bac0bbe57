/** A quote as a document: what a customer gets, and beside it what the shop alone should know. */
package sledwright.report.offer;
