/**
 * Platforms and parts that a request names, wants or forbids.
 */
package sledwright.rules.choice;
