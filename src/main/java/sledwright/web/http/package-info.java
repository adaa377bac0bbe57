/** What every request over HTTP goes through, whatever it asks: bounds, who may ask, what a refusal looks like, and the line in the log. */
package sledwright.web.http;
