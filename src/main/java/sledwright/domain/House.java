package sledwright.domain;

/**
 * What a shop holds itself to where a request says nothing else.
 *
 * @param memory how memory is populated
 */
public record House(MemoryWish memory) {

    /** A shop that sells whatever its boards take. */
    public static final House OPEN = new House(MemoryWish.NONE);
}
