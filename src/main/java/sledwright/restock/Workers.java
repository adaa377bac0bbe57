package sledwright.restock;

import java.util.function.IntConsumer;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/** Shares work out among a fixed number of workers, so that each piece is always done by the same, on any machine. */
final class Workers {

    static final int COUNT = 2;

    private Workers() {
    }

    static int of(int piece) {
        return piece % COUNT;
    }

    /** @param worker what each worker does with each of its pieces */
    static void share(int pieces, IntFunction<IntConsumer> worker) {
        IntStream.range(0, COUNT).parallel().forEach(number -> {
            IntConsumer work = worker.apply(number);
            for (int piece = number; piece < pieces; piece += COUNT) {
                work.accept(piece);
            }
        });
    }
}
