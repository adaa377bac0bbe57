/**
 * The figures that a request asks of one machine.
 */
package sledwright.rules.target;
