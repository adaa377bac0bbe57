package sledwright.label;

/**
 * Something that a module's label or SPD does not say.
 *
 * @param what a column of memory.csv, or another thing that a catalogue needs
 * @param why  what stands in its place and where to find it
 */
public record Unknown(String what, String why) {
}
