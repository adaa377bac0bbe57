/** Memory on offer to a family of machines: levels, priced populations, and bounds below their prices. */
package sledwright.generator.memory;
