/**
 * Benchmarks that people run by hand; docs/performance.md has the commands and what was measured. No test runs them.
 */
package sledwright.bench;
