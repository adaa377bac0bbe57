/** What an order draws on and what it is made of: lots, enclosures, and columns, which are ways to build the machines of a line. */
package sledwright.planner.order.market;
