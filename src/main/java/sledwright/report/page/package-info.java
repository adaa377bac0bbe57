/**
 * The ground that documents stand on: templates with escaping, one style sheet for screen, phone and paper, paper from pages, and figures
 * as the shop's locale writes them. Nothing here knows what a document is about.
 */
package sledwright.report.page;
