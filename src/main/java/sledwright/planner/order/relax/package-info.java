/** The linear relaxation of an order: column generation, dual values, lower bounds, and what a branch restricts. */
package sledwright.planner.order.relax;
