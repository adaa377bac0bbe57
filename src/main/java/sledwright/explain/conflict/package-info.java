/** Why a request has no answer: its demands, the smallest sets of them that conflict, and the least corrections. */
package sledwright.explain.conflict;
