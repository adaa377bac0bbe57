package sledwright.generator.shape;

/** The modules of a socket, free of prices. */
public record Population(ShapeKey key, Shapes.Figures figures, Shapes.Shape shape) {
}
