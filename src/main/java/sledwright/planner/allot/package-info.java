/**
 * Machines that were promised to several customers, drawn anew from the stock of a day: promises kept, as few machines changed as
 * possible, then at the least cost. OptaPlanner decides among builds that the exact search found; what no draw goes below is worked out
 * beside it.
 */
package sledwright.planner.allot;
