package sledwright.domain;

/**
 * How the memory of machines is populated beyond what their boards ask for, so that it can be sold.
 *
 * @param balanced whether every channel of every fitted socket holds the same GB
 * @param onePart  whether all modules of all machines are of one part number
 */
public record MemoryWish(boolean balanced, boolean onePart) {

    public static final MemoryWish NONE = new MemoryWish(false, false);

    /** The same, balanced or not. */
    public MemoryWish withBalanced(boolean whether) {
        return new MemoryWish(whether, onePart);
    }

    /** The same, of one part number or of any. */
    public MemoryWish withOnePart(boolean whether) {
        return new MemoryWish(balanced, whether);
    }
}
