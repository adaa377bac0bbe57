/**
 * Independent judges of the search and the rulebook: small, naive second readings of the rules that share no code with the
 * program's own, random catalogues and requests, an enumeration of every build, and an outside solver.
 */
package sledwright.oracle;
