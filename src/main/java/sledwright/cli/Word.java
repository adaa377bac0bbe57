package sledwright.cli;

import java.util.Arrays;
import java.util.function.Function;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import sledwright.compare.Cost;
import sledwright.generator.Axis;

/** Reads one of an option's words, whatever its case. */
abstract class Word<E extends Enum<E>> implements ITypeConverter<E> {

    private final E[] words;
    private final Function<E, String> word;

    private Word(E[] words, Function<E, String> word) {
        this.words = words;
        this.word = word;
    }

    private Word(E[] words) {
        this(words, E::toString);
    }

    @Override
    public E convert(String given) {
        return Arrays.stream(words).filter(one -> word.apply(one).equalsIgnoreCase(given)).findFirst()
                .orElseThrow(() -> new TypeConversionException("'%s' must be one of %s".formatted(given,
                        Arrays.stream(words).map(word).collect(Collectors.joining(", ")))));
    }

    static final class OfFormat extends Word<Format> {
        OfFormat() {
            super(Format.values());
        }
    }

    static final class OfAxis extends Word<Axis> {
        OfAxis() {
            super(Axis.values(), Axis::label);
        }
    }

    static final class OfCost extends Word<Cost> {
        OfCost() {
            super(Cost.values(), Cost::label);
        }
    }

    static final class OfColour extends Word<Colour> {
        OfColour() {
            super(Colour.values());
        }
    }
}
