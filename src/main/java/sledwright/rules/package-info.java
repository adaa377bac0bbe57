/**
 * The rulebook, stated once. A rule is a small class under the name of what it governs ({@code processor}, {@code cooling},
 * {@code memory}, {@code power}, {@code enclosure}, {@code stock}, {@code target}, {@code choice}); {@link sledwright.rules.Rulebook} lists
 * them. The search prunes with their predicates, the planner turns them into constraints, {@code check} and every explanation
 * print their sentences.
 */
package sledwright.rules;
