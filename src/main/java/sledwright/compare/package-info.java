/** What money buys, figure by figure: every step of a request's figures over its price or its total cost, each build judged. */
package sledwright.compare;
