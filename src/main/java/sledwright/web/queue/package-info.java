/** Who works on which question, and for how long others wait. */
package sledwright.web.queue;
