/**
 * Reading files of people: a fault with file, line and what would be right; all faults collected; YAML and CSV with the line
 * of every key and value. Knows nothing of parts or requests.
 */
package sledwright.input;
