/** How two catalogues differ, and what that does to requests. */
package sledwright.explain.change;
