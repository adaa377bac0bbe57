/**
 * The exact search: the best build of one machine, or of several identical ones, its alternatives, and the proof that nothing
 * better exists. A machine is taken as a frame and its memory, which are searched apart and joined under bounds; whatever does
 * not depend on prices is worked out once. It states no rule of its own: where it makes a choice it asks the rule's
 * {@code allows}. {@link sledwright.generator.Search} has the steps.
 */
package sledwright.generator;
