/**
 * Decides between builds that the generator found, and judges every build before it leaves the program. OptaPlanner holds
 * the model: a line of an order chooses among its candidates; the rules are hard constraints, what a build costs and gives
 * are soft ones in the order of the objective. Planning entities never leave this package.
 */
package sledwright.planner;
