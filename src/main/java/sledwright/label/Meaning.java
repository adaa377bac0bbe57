package sledwright.label;

/**
 * What one field says.
 *
 * @param field      its name
 * @param written    as the label or the SPD has it
 * @param meaning    in words
 * @param fromMemory whether the meaning is from memory of the standard, not from anything published that was seen
 */
public record Meaning(String field, String written, String meaning, boolean fromMemory) {
}
