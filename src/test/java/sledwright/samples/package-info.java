/**
 * Readable builders of machines and requests for examples, and seeded generators of whole catalogues and
 * requests. What they make is invented.
 */
package sledwright.samples;
