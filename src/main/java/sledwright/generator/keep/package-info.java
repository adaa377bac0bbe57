/** What has been worked out and may be asked for again. */
package sledwright.generator.keep;
