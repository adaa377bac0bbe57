/** The catalogue as it stands: read anew when its files change, and known to a desk. */
package sledwright.web.shop;
