/**
 * Which processors a platform takes, and how many.
 */
package sledwright.rules.processor;
