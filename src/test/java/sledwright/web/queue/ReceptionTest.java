package sledwright.web.queue;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.Callback;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sledwright.web.Wire;
import sledwright.web.http.Responses;

class ReceptionTest {

    private final List<Throwable> defects = new CopyOnWriteArrayList<>();
    private final CountDownLatch begun = new CountDownLatch(1);
    private final CountDownLatch ended = new CountDownLatch(1);
    private final Departures departures = new Departures();
    private final SearchQueue queue = new SearchQueue(1, 4);
    private final Server server = new Server(0);
    private URI address;

    /** What the body says is done: {@code fail}, {@code wait} until nobody waits any more, or answered at once. */
    private final class Worker extends Handler.Abstract {

        private final Reception reception = new Reception(queue, 1_000, Duration.ofSeconds(5), departures, defects::add);

        @Override
        public boolean handle(Request request, Response response, Callback callback) {
            reception.serve(request, response, callback, false, (body, visit) -> {
                String word = new String(body);
                if (word.equals("fail")) {
                    throw new IllegalStateException("a secret of the inside");
                }
                begun.countDown();
                long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(10);
                while (word.equals("wait") && !visit.isOver() && System.nanoTime() < end) {
                    Thread.onSpinWait();
                }
                ended.countDown();
                visit.finish(() -> Responses.json(200, visit.isOver() ? "ended" : "done", request, response, callback));
            });
            return true;
        }
    }

    @BeforeEach
    void start() throws Exception {
        server.setHandler(new Worker());
        server.start();
        address = URI.create("http://127.0.0.1:" + ((ServerConnector) server.getConnectors()[0]).getLocalPort() + "/");
    }

    @AfterEach
    void stop() throws Exception {
        server.stop();
        queue.close();
        departures.close();
    }

    private CompletableFuture<Wire.Reply> ask(String body) {
        return CompletableFuture.supplyAsync(() -> Wire.post(address, "/", "text/plain", body, "Sledwright-Line: page 1"), work -> new Thread(work).start());
    }

    @Test
    void aNewerQuestionOfTheSameLineEndsTheOlder() throws Exception {
        CompletableFuture<Wire.Reply> first = ask("wait");
        assertThat(begun.await(5, TimeUnit.SECONDS)).isTrue();
        CompletableFuture<Wire.Reply> last = ask("done");
        assertThat(first.get(5, TimeUnit.SECONDS).body()).as("the best so far").isEqualTo("ended");
        assertThat(last.get(5, TimeUnit.SECONDS).body()).isEqualTo("done");
    }

    @Test
    void whatWasOvertakenBeforeItBeganIsNotBegun() throws Exception {
        CountDownLatch held = new CountDownLatch(1);
        queue.submit(Turn.SOON, () -> {
            try {
                held.await(10, TimeUnit.SECONDS);
            } catch (InterruptedException hurried) {
                Thread.currentThread().interrupt();
            }
        });
        CompletableFuture<Wire.Reply> first = ask("one");
        Thread.sleep(200);
        CompletableFuture<Wire.Reply> last = ask("two");
        Thread.sleep(200);
        held.countDown();
        assertThat(first.get(5, TimeUnit.SECONDS).status()).isEqualTo(409);
        assertThat(first.join().body()).contains("was overtaken by a newer one");
        assertThat(last.get(5, TimeUnit.SECONDS).body()).isEqualTo("done");
    }

    /** However the answer would be sent: the search ends when nobody reads it any more. */
    @Test
    void whoeverLeavesEndsTheirQuestion() throws Exception {
        Socket leaving = Wire.open(address);
        leaving.getOutputStream().write("POST / HTTP/1.1\r\nHost: localhost\r\nContent-Type: text/plain\r\nContent-Length: 4\r\n\r\nwait".getBytes(StandardCharsets.UTF_8));
        assertThat(begun.await(5, TimeUnit.SECONDS)).isTrue();
        leaving.close();
        assertThat(ended.await(3, TimeUnit.SECONDS)).as("long before the work would have ended by itself").isTrue();
        assertThat(ask("done").get(5, TimeUnit.SECONDS).body()).isEqualTo("done");
    }

    /** Over one connection, one after the other and one behind the other. */
    @Test
    void whoeverStaysIsAnswered() throws Exception {
        String one = "POST / HTTP/1.1\r\nHost: localhost\r\nContent-Type: text/plain\r\nContent-Length: 4\r\n\r\ndone";
        try (Socket staying = Wire.open(address)) {
            for (int i = 0; i < 5; i++) {
                staying.getOutputStream().write(one.getBytes(StandardCharsets.UTF_8));
                byte[] reply = new byte[4];
                InputStream in = staying.getInputStream();
                StringBuilder read = new StringBuilder();
                while (!read.toString().contains("done")) {
                    read.append(new String(reply, 0, in.read(reply), StandardCharsets.UTF_8));
                }
                assertThat(read.toString()).startsWith("HTTP/1.1 200 ");
            }
        }
        String both = one + one.replace("Host: localhost", "Host: localhost\r\nConnection: close");
        assertThat(Wire.say(address, both).body()).as("two at once").contains("done").contains("HTTP/1.1 200 ").endsWith("done");
    }

    @Test
    void aDefectIsToldWithoutTheInside() {
        Wire.Reply reply = ask("fail").join();
        assertThat(reply.status()).isEqualTo(500);
        assertThat(reply.body()).contains("could not be answered: this is a defect of the program").doesNotContain("secret");
        assertThat(defects).singleElement().satisfies(defect -> assertThat(defect).hasMessage("a secret of the inside"));
    }
}
