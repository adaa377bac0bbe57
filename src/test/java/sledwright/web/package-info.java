/** The server as programs and people meet it: over a socket. */
package sledwright.web;
