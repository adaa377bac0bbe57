package sledwright.domain;

import java.util.OptionalDouble;

/**
 * The memory modes that a platform offers beside the independent one.
 *
 * @param mirroredFraction share of the memory that mirroring leaves; empty: the platform does not mirror
 * @param rankSparing      whether the platform spares ranks
 */
public record MemoryModes(OptionalDouble mirroredFraction, boolean rankSparing) {
}
