/** Answers as renderers read them: immutable, so that text, JSON and documents of one answer cannot disagree. */
package sledwright.desk.view;
