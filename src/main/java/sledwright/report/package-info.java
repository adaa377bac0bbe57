/**
 * What people and programs read: pure functions of the desk's views. Every renderer of an answer reads the same view, so that text, JSON
 * and CSV cannot disagree. Nothing here prints.
 */
package sledwright.report;
