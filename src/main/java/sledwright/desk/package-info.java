/**
 * Where every face asks: for each kind of question one entry of {@link sledwright.desk.Desk}, from a named source, what is asked of it and
 * on what terms to an answer with its view, or to what is wrong, as values. The wiring of catalogue, search, judging and explanation stands
 * here and nowhere else; streams, options of a command line and exit codes do not.
 */
package sledwright.desk;
