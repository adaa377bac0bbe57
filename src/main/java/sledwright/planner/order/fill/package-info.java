/** Whole orders: how they are filled machine by machine, bettered, rounded from a mix, and priced as they will be drawn. */
package sledwright.planner.order.fill;
