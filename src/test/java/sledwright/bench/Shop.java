package sledwright.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import sledwright.catalog.CatalogReader;
import sledwright.domain.Catalog;
import sledwright.domain.Request;
import sledwright.request.Job;
import sledwright.samples.CatalogGenerator;
import sledwright.samples.RequestFiles;
import sledwright.samples.RequestGenerator;

/**
 * A catalogue and random requests for it.
 *
 * @param readMillis processor time that reading the folder took, of the thread
 */
record Shop(String name, Catalog catalog, RequestGenerator requests, double readMillis) {

    /** Of generated catalogues, so that the same command measures the same. */
    private static final long CATALOG_SEED = 20261116;

    /** The demo shop. */
    static Shop demo() {
        return read("demo", Path.of("catalogs/heronfold-yard"));
    }

    /** A generated shop that is gone from the disk once it is read. */
    static Shop generated(int scale) {
        try {
            Path folder = Files.createTempDirectory("sledwright-shop");
            try {
                CatalogGenerator.write(scale, CATALOG_SEED, folder);
                return read("x" + scale, folder);
            } finally {
                delete(folder);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** {@code demo}, or {@code x10} for a generated one of scale 10. */
    static Shop named(String name) {
        if (name.equals("demo")) {
            return demo();
        }
        if (!name.matches("x[1-9][0-9]*")) {
            throw new IllegalArgumentException("no such shop (" + name + ")\nMaybe demo, or x10 for a generated one of scale 10.");
        }
        return generated(Integer.parseInt(name.substring(1)));
    }

    private static Shop read(String name, Path folder) {
        ThreadMXBean clock = ManagementFactory.getThreadMXBean();
        long start = clock.getCurrentThreadCpuTime();
        Catalog catalog = CatalogReader.read(folder);
        double millis = (clock.getCurrentThreadCpuTime() - start) / 1e6;
        return new Shop(name, catalog, new RequestGenerator("shop", folder), millis);
    }

    /** A request file's text as the program would understand it. */
    Request request(String yaml) {
        try {
            Path file = Files.createTempFile("sledwright-request", ".yaml");
            try {
                Files.writeString(file, yaml);
                return ((Job.Single) RequestFiles.job(file, catalog)).request();
            } finally {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void delete(Path folder) throws IOException {
        List<Path> all = new ArrayList<>();
        try (Stream<Path> found = Files.walk(folder)) {
            found.sorted(Comparator.reverseOrder()).forEach(all::add);
        }
        for (Path path : all) {
            Files.delete(path);
        }
    }
}
