package sledwright.input;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** Reads a pipe or a device, which may never give anything: the system cannot be asked to stop waiting, so another thread waits for it. */
final class Pipe {

    private static final int CHUNK = 1 << 16;
    /** The most that is read ahead, in chunks. */
    private static final int AHEAD = 16;
    private static final byte[] END = {};

    /** What came of one read. */
    private record Chunk(byte[] bytes, IOException failed) {
    }

    private Pipe() {
    }

    /**
     * The first {@code most} bytes, or as many as there are.
     *
     * @param patience how long nothing may come
     * @throws IOException when it cannot be read, or nothing came for so long
     */
    static byte[] read(Path path, int most, Duration patience) throws IOException {
        BlockingQueue<Chunk> chunks = new LinkedBlockingQueue<>(AHEAD);
        Thread reader = new Thread(() -> fill(chunks, path, most), "reader of " + path);
        reader.setDaemon(true);
        reader.start();
        ByteArrayOutputStream found = new ByteArrayOutputStream();
        try {
            while (true) {
                Chunk next = chunks.poll(patience.toMillis(), TimeUnit.MILLISECONDS);
                if (next == null) {
                    throw new IOException("nothing came out of it for %s s".formatted(patience.toSeconds()));
                }
                if (next.failed() != null) {
                    throw next.failed();
                }
                if (next.bytes().length == 0) {
                    return found.toByteArray();
                }
                found.write(next.bytes());
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IOException("the reading was stopped", stopped);
        } finally {
            reader.interrupt();
        }
    }

    private static void fill(BlockingQueue<Chunk> chunks, Path path, int most) {
        try {
            try (InputStream in = Files.newInputStream(path)) {
                int left = most;
                byte[] buffer = new byte[CHUNK];
                for (int read = in.read(buffer, 0, Math.min(left, CHUNK)); read > 0; read = in.read(buffer, 0, Math.min(left, CHUNK))) {
                    chunks.put(new Chunk(Arrays.copyOf(buffer, read), null));
                    left -= read;
                }
                chunks.put(new Chunk(END, null));
            } catch (IOException failed) {
                chunks.put(new Chunk(END, failed));
            }
        } catch (InterruptedException nobodyWaits) {
            // What was read is not needed any more.
        }
    }
}
