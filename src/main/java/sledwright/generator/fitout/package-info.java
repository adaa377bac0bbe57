/**
 * Drives, cards, extras and enclosures of a machine: every set that the rules allow and no other beats in price and watts. They depend on
 * the platform and the number of processors alone, so they are worked out once for both.
 */
package sledwright.generator.fitout;
