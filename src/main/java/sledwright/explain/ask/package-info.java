/** Questions put to the exact search: a request with one circumstance changed, and whether it has an answer. */
package sledwright.explain.ask;
