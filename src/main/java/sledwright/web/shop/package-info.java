/** The catalogue as it stands: read again when its files change, and known to a desk. */
package sledwright.web.shop;
