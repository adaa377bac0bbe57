/**
 * What people and programs read. An answer becomes one immutable view, and every renderer reads that view alone, so that text,
 * JSON and CSV cannot disagree. Pure functions: nothing here prints.
 */
package sledwright.report;
