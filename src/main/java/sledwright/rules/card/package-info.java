/**
 * Expansion cards, the slots that they sit in, and extras that are bought with what is fitted.
 */
package sledwright.rules.card;
