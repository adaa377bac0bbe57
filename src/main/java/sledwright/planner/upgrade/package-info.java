/**
 * The least that must be spent so that machines which stand already reach a target: their parts count as stock, the search finds
 * the best use of it, and the modules that stay are moved as little as can be.
 */
package sledwright.planner.upgrade;
