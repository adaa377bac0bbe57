/**
 * Drives, the bays that they sit in, and what drives them.
 */
package sledwright.rules.storage;
