package sledwright.cli;

import java.util.Arrays;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads one of an option's words, whatever its case. */
abstract class Word<E extends Enum<E>> implements ITypeConverter<E> {

    private final E[] words;

    private Word(E[] words) {
        this.words = words;
    }

    @Override
    public E convert(String given) {
        return Arrays.stream(words).filter(word -> word.toString().equalsIgnoreCase(given)).findFirst()
                .orElseThrow(() -> new TypeConversionException("'%s' must be one of %s".formatted(given,
                        Arrays.stream(words).map(Object::toString).collect(Collectors.joining(", ")))));
    }

    static final class OfFormat extends Word<Format> {
        OfFormat() {
            super(Format.values());
        }
    }

    static final class OfColour extends Word<Colour> {
        OfColour() {
            super(Colour.values());
        }
    }
}
