package sledwright.generator.draw;

/**
 * How many units modules are drawn in.
 *
 * @param perModule   units over all machines that one module of a shape stands for
 * @param mostModules of a shape
 */
public record UnitCounts(int machines, int perModule, int mostModules) {
}
