/**
 * What lots hold, when they arrive, in which condition, and what the order may cost.
 */
package sledwright.rules.stock;
