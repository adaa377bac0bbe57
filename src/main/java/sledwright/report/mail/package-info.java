/** What a customer's mail says, as JSON. */
package sledwright.report.mail;
