import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.function.BiFunction;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.IntSupplier;
import java.util.function.LongBinaryOperator;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import java.util.function.ToLongFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Lambdas and records of many kinds; what main prints must not depend on how they are linked. */
public final class Sample {

    record None() {
    }

    record One(String name) {
    }

    record Every(boolean flag, byte small, short brief, char letter, int whole, long wide, float rough, double fine, String text, int[] many,
            One inner, List<One> list) {
    }

    record Own<T>(T value, int count) {

        @Override
        public int hashCode() {
            return 7;
        }
    }

    record Sorted(int rank) implements Comparable<Sorted> {

        private static final Comparator<Sorted> ORDER = Comparator.comparingInt(Sorted::rank).thenComparing(Sorted::toString).reversed();

        @Override
        public int compareTo(Sorted other) {
            return ORDER.compare(this, other);
        }
    }

    private static class Base {

        String said(String word) {
            return "base " + word;
        }
    }

    private static final class Derived extends Base {

        private final long number;

        private Derived(int number) {
            this.number = number;
        }

        @Override
        String said(String word) {
            Function<String, String> above = super::said;
            return above.apply(word) + number;
        }

        private Supplier<Long> number() {
            return () -> number;
        }
    }

    interface Shape {

        double area();

        default Supplier<Double> twice() {
            return () -> hidden() * 2;
        }

        private double hidden() {
            return area();
        }

        static Shape square(double side) {
            return () -> side * side;
        }
    }

    interface Named<T extends CharSequence> {

        T name(T given, int times);
    }

    enum Level {
        LOW(n -> n + 1), HIGH(n -> n * 10);

        private final DoubleUnaryOperator step;

        Level(DoubleUnaryOperator step) {
            this.step = step;
        }
    }

    private final int field = 5;

    private static String told(Object... things) {
        return things.length + String.valueOf(things[0]);
    }

    private static long wide(long number) {
        return number + 1;
    }

    private static String letter(int code) {
        return "code " + code;
    }

    private static Integer boxed(String text) {
        return text.length();
    }

    private int mine(Integer more) {
        return field + more;
    }

    private static <T extends Number & Comparable<T>> ToIntFunction<T> whole() {
        return Number::intValue;
    }

    private static void lambdas() throws Exception {
        List<Object> said = new ArrayList<>();
        byte b = 1;
        short s = 2;
        char c = 'c';
        long l = 4;
        float f = 5.5f;
        double d = 6.25;
        boolean yes = true;
        int[] many = {1, 2};
        Sample self = new Sample();
        Supplier<Object> caught = () -> b + s + c + l + f + d + (yes ? 1 : 0) + many[1] + self.field;
        said.add(caught.get());
        ToLongFunction<Integer> unboxedAndWidened = Integer::intValue;
        ToDoubleFunction<Integer> fromLong = Integer::longValue;
        Function<Integer, Long> wideParameter = Sample::wide;
        Function<Character, String> letterAsNumber = Sample::letter;
        ToIntFunction<String> unboxedBack = Sample::boxed;
        ToLongFunction<String> unboxedBackAndWidened = Sample::boxed;
        Function<String, Object> anyBack = Sample::boxed;
        Function<String, Object> boxedBack = Integer::parseInt;
        Function<Integer, Object> bound = self::mine;
        BiFunction<Sample, Integer, Integer> free = Sample::mine;
        LongBinaryOperator sum = Long::sum;
        Predicate<Boolean> not = value -> !value;
        BooleanSupplier agreed = Boolean.TRUE::booleanValue;
        said.addAll(List.of(unboxedAndWidened.applyAsLong(3), fromLong.applyAsDouble(4), wideParameter.apply(5), letterAsNumber.apply('x'),
                unboxedBack.applyAsInt("abc"), unboxedBackAndWidened.applyAsLong("abcd"), anyBack.apply("xy"), boxedBack.apply("17"),
                bound.apply(2), free.apply(self, 3), sum.applyAsLong(1L << 40, 2), not.test(false), agreed.getAsBoolean()));
        Consumer<String> dropped = said::add;
        dropped.accept("dropped result");
        Function<Integer, Derived> maker = Derived::new;
        said.add(maker.apply(8).said("word") + maker.apply(9).number().get());
        IntFunction<int[]> array = int[]::new;
        Function<Integer, List<String>> sized = ArrayList::new;
        Function<Object, String> spread = Sample::told;
        said.addAll(List.of(array.apply(3).length, sized.apply(4), spread.apply("thing")));
        IntSupplier length = "four"::length;
        Callable<Integer> thrown = () -> {
            throw new java.io.IOException("thrown");
        };
        try {
            thrown.call();
        } catch (java.io.IOException expected) {
            said.add(expected.getMessage() + length.getAsInt());
        }
        said.add(Shape.square(3).twice().get());
        Named<StringBuilder> named = (given, times) -> given.append(times);
        said.add(named.name(new StringBuilder("n"), 2).toString());
        said.add(Level.LOW.step.applyAsDouble(1) + Level.HIGH.step.applyAsDouble(1));
        said.add(Sample.<Integer>whole().applyAsInt(77));
        Comparator<String> kept = (Comparator<String> & Serializable) (x, y) -> y.compareTo(x);
        said.add(Stream.of("a", "c", "b").sorted(kept).toList());
        said.add(IntStream.range(0, 5).boxed().collect(Collectors.groupingBy(i -> i % 2, TreeMap::new, Collectors.summingInt(i -> i))));
        said.add(Map.of("k", 1).entrySet().stream().map(Map.Entry::getKey).collect(Collectors.joining("-")));
        said.add(Stream.of(new Sorted(1), new Sorted(3), new Sorted(2)).sorted().toList());
        Supplier<Supplier<Supplier<String>>> nested = () -> () -> () -> "deep" + l;
        said.add(nested.get().get().get());
        Runnable same = Sample::nothing;
        same.run();
        said.forEach(System.out::println);
        try {
            ((Function<Object, Object>) (Function<?, ?>) boxedBack).apply(3);
        } catch (ClassCastException expected) {
            System.out.println("a wrong argument is refused");
        }
        String absent = null;
        try {
            Supplier<Integer> early = absent::length;
            System.out.println(early);
        } catch (NullPointerException expected) {
            System.out.println("nothing has no methods");
        }
    }

    private static void nothing() {
        System.out.println("run");
    }

    private static void records() {
        int[] many = {};
        List<Object> all = new ArrayList<>(List.of(new None(), new None(), new One("a"), new One("b"), new One("a"), new Own<>("x", 1), new Own<>(2, 1),
                new Own<>(2, 1), new Sorted(4)));
        all.add(new One(null));
        all.add(new Own<>(null, 3));
        for (float rough : new float[] {0f, -0f, Float.NaN, 1.5f}) {
            for (double fine : new double[] {0, -0.0, Double.NaN, 1e300}) {
                for (long wide : new long[] {0, -1, 1L << 40}) {
                    all.add(new Every(wide < 0, (byte) -3, (short) 300, 'q', -5, wide, rough, fine, "t", null, new One("i"), List.of(new One("l"))));
                }
            }
        }
        int empty = new Every(true, (byte) 0, (short) 0, 'a', 0, 0, 0, 0, "", many, null, null).equals(
                new Every(true, (byte) 0, (short) 0, 'a', 0, 0, 0, 0, "", many, null, null)) ? 1 : 0;
        System.out.println(empty);
        all.add(null);
        all.add("text");
        for (Object one : all) {
            StringBuilder equal = new StringBuilder();
            all.forEach(other -> equal.append(Objects.equals(one, other) ? 1 : 0));
            System.out.println(one + " " + Objects.hashCode(one) + " " + equal);
        }
        System.out.println(Collections.frequency(all, new One("a")));
    }

    public static void main(String[] arguments) throws Exception {
        lambdas();
        records();
    }
}
