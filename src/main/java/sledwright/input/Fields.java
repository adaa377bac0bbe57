package sledwright.input;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * Values by name: a row of a table, or a section of YAML. What is wrong goes to the collector of faults; the caller then gets
 * a value that stands for nothing, so it builds no object from faulty fields.
 */
public interface Fields {

    /** Where a missing value is reported. */
    Place place();

    Faults faults();

    /** Whether there is a value under that name, right or wrong. */
    boolean has(String name);

    /** The single value under a name; empty when there is none or, with a fault, when it is not single. */
    Optional<Field> field(String name);

    /** Reports that a value is missing. */
    default void missing(String name) {
        faults().add(place(), name + " is missing");
    }

    /** The single value under a name that must have one. */
    default Optional<Field> required(String name) {
        if (!has(name)) {
            missing(name);
        }
        return field(name);
    }

    default String text(String name) {
        return required(name).flatMap(field -> field.words(faults())).orElse("");
    }

    default String text(String name, String otherwise) {
        return field(name).flatMap(field -> field.words(faults())).orElse(otherwise);
    }

    default String sku(String name) {
        return required(name).flatMap(field -> field.sku(faults())).orElse("");
    }

    default int whole(String name, Bounds bounds) {
        return required(name).flatMap(field -> field.whole(bounds, faults())).orElse(0);
    }

    /** The whole figure; empty when there is none. */
    default Optional<Integer> wholeIfAny(String name, Bounds bounds) {
        return field(name).flatMap(field -> field.whole(bounds, faults()));
    }

    default double number(String name, Bounds bounds) {
        return required(name).flatMap(field -> field.decimal(bounds, faults())).map(BigDecimal::doubleValue).orElse(0.0);
    }

    /** The figure; empty when there is none. */
    default Optional<Double> numberIfAny(String name, Bounds bounds) {
        return decimalIfAny(name, bounds).map(BigDecimal::doubleValue);
    }

    /** The exact figure; empty when there is none. */
    default Optional<BigDecimal> decimalIfAny(String name, Bounds bounds) {
        return field(name).flatMap(field -> field.decimal(bounds, faults()));
    }

    /** True or false; empty when there is none or it is faulty. */
    default Optional<Boolean> truthIfAny(String name) {
        return field(name).flatMap(field -> field.truth(faults()));
    }

    /** What a word stands for that must be there; empty, with a fault, when it is not or is none of them. */
    default <T> Optional<T> word(String name, Vocabulary<T> words) {
        return required(name).flatMap(field -> field.word(words, faults()));
    }

    /** What a word stands for; empty when there is none or it is faulty. */
    default <T> Optional<T> wordIfAny(String name, Vocabulary<T> words) {
        return field(name).flatMap(field -> field.word(words, faults()));
    }
}
