/**
 * Checks against something outside the project, each beside its source. A value is marked S where the source itself was seen, M
 * where it is from memory and D where it follows by arithmetic; no check rests on an M value alone. A fact of the trade that no
 * source states is marked "common practice, no source".
 */
package sledwright.outside;
