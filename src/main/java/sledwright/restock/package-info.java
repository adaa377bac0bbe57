/**
 * What to buy for the orders that a shop expects: courses of events are sampled, a linear program with the shared stock chooses
 * quantities and bounds what any choice could earn, and a simulation in which orders are served as they come shows what the plan earns.
 */
package sledwright.restock;
