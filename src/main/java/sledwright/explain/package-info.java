/**
 * Why an answer is what it is: reasons, differences, and what conflicts. Sentences only; every number in them comes from the
 * rules and the metrics.
 */
package sledwright.explain;
