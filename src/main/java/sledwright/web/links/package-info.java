/** Customers' links: one request each, which whoever has the address may look at and change within limits, until a day. */
package sledwright.web.links;
