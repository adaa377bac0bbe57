/** Who comes in: logging in and out, and what each role may do. */
package sledwright.web.door;
