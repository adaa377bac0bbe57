/** What more or less of a required figure costs, and between which prices of a part the best build stays the best. */
package sledwright.explain.steps;
