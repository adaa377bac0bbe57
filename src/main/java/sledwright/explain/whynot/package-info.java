/** Why a part is not in the best build. */
package sledwright.explain.whynot;
