/**
 * Memory modules from what is on them: the printed label of JEDEC (JESD21-C annexes for DDR3 and DDR4, JESD401-5B for DDR5) and the
 * SPD, the small memory in which a module describes itself. Where a fact of a standard was not seen but is from memory, the code says
 * so beside it; docs/labels.md has the table.
 */
package sledwright.label;
