/**
 * How memory modules may populate slots, channels and sockets.
 */
package sledwright.rules.memory;
