/**
 * What an enclosure houses and feeds, held against the sleds in its bays.
 */
package sledwright.rules.enclosure;
