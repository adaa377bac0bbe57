package sledwright.input;

/**
 * Where a value stands.
 *
 * @param file the file as the user named it, or the argument of the command line that set the value
 * @param line its line, from 1; 0 where no line can be named
 */
public record Place(String file, int line) {

    /** A whole file. */
    public static Place of(String file) {
        return new Place(file, 0);
    }

    /** This place in a message about another: the line alone within one file. */
    public String seenFrom(Place other) {
        return file.equals(other.file) ? "line " + line : toString();
    }

    @Override
    public String toString() {
        return line > 0 ? file + ":" + line : file;
    }
}
