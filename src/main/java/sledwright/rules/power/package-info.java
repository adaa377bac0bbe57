/**
 * What supplies and enclosures deliver, held against the load.
 */
package sledwright.rules.power;
