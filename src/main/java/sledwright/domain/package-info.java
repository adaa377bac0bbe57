/**
 * The facts: parts, platforms, lots, requests, builds. Immutable, without input or output, importing nothing of ours.
 * Money is whole minor units of the catalogue's currency; watts, GB, MT/s and GB/s are in the names.
 */
package sledwright.domain;
