/** The questions that programs ask: the commands' questions, options and JSON over HTTP. */
package sledwright.web.api;
