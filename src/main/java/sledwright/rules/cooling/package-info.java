/**
 * Heat sinks, the slots that they cover, and the air at the inlet.
 */
package sledwright.rules.cooling;
