/** Where memory modules may go, whatever they cost: counts by group, fullest channels, and the slot of each module. */
package sledwright.generator.shape;
