package sledwright.generator.keep;

import java.util.List;

/** Values of which equal ones are the same; what they come to as a whole is worked out once. */
public final class Content {

    private final List<Object> values;
    private final int hash;

    public Content(List<Object> values) {
        this.values = values;
        hash = values.hashCode();
    }

    @Override
    public int hashCode() {
        return hash;
    }

    @Override
    public boolean equals(Object other) {
        return this == other || other instanceof Content content && hash == content.hash && values.equals(content.values);
    }
}
