/** The price at which a part would be chosen, and what makes up a difference in price. */
package sledwright.explain.price;
