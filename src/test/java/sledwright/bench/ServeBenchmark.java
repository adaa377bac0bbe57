package sledwright.bench;

import java.io.IOException;
import java.io.PrintStream;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * The page under load, served by a process of its own: what a change of a wish takes for one client, how many answers a second several get,
 * each compared with the one before, and when a browser has painted it.
 */
final class ServeBenchmark {

    private final PrintStream out;

    ServeBenchmark(PrintStream out) {
        this.out = out;
    }

    /** Varied wishes, as somebody on the telephone changes them: one figure after the other. */
    static List<String> wishes(int count, int seed) {
        Random chance = new Random(seed);
        int[] cores = {4, 8, 12, 16, 20, 24, 32, 40, 48, 64};
        int[] memory = {16, 32, 64, 96, 128, 192, 256, 384, 512};
        List<String> wishes = new ArrayList<>();
        while (wishes.size() < count) {
            String require = "cores: %s, memory_gb: %s".formatted(cores[chance.nextInt(cores.length)], memory[chance.nextInt(memory.length)]);
            String more = switch (chance.nextInt(6)) {
                case 0 -> ", bandwidth_gbs: " + 10 * (3 + chance.nextInt(15));
                case 1 -> ", all_core_ghz: 2." + chance.nextInt(9);
                case 2 -> ", spare_slots: " + chance.nextInt(6);
                default -> "";
            };
            String limit = switch (chance.nextInt(4)) {
                case 0 -> "limit: { lead_days: %s }".formatted(2 + chance.nextInt(8));
                case 1 -> "limit: { power_w: %s, inlet_c: 25 }".formatted(200 + 20 * chance.nextInt(20));
                case 2 -> "limit: { conditions: [used] }";
                default -> "machines: " + (1 + chance.nextInt(4));
            };
            wishes.add("kind: quote\nrequire: { %s%s }\n%s\n".formatted(require, more, limit));
        }
        return wishes.stream().distinct().toList();
    }

    void run(int count, int seconds) throws Exception {
        List<String> wishes = wishes(count, 1);
        try (ServedDemo demo = ServedDemo.start()) {
            out.printf("ready after %.1f s; first answer, right then, after %.0f ms%n", demo.seconds(), first(demo.address(), wishes.get(0)));
            URI page = demo.address().resolve("/page/answer");
            HttpClient client = HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
            Map<String, String> answers = new LinkedHashMap<>();
            for (String wish : wishes) {
                answers.put(wish, ask(client, page, wish).body());
            }
            double[] times = wishes.stream().mapToDouble(wish -> timed(client, page, wish)).sorted().toArray();
            out.printf("one client, %d wishes: median %.1f ms, 95 %% %.1f ms, worst %.0f ms%n", times.length, times[times.length / 2],
                    times[times.length * 95 / 100], times[times.length - 1]);
            several(demo, answers, 8, Duration.ofSeconds(seconds));
            out.printf("the server alone: %s; defects: %s%n", demo.memory(), demo.defects());
            PaintedAnswers.print(out, demo.address());
        }
    }

    /** As plain as can be, so that what a client learns by working is not counted. */
    private static double first(URI server, String wish) throws IOException {
        byte[] body = wish.getBytes(StandardCharsets.UTF_8);
        String head = "POST /page/answer HTTP/1.1\r\nHost: " + server.getAuthority() + "\r\nConnection: close\r\nContent-Type: application/yaml\r\nContent-Length: " + body.length
                + "\r\n\r\n";
        long begun = System.nanoTime();
        try (Socket socket = new Socket(server.getHost(), server.getPort())) {
            socket.getOutputStream().write((head + wish).getBytes(StandardCharsets.UTF_8));
            String reply = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            if (!reply.startsWith("HTTP/1.1 200 ")) {
                throw new IllegalStateException(reply);
            }
        }
        return (System.nanoTime() - begun) / 1e6;
    }

    private void several(ServedDemo demo, Map<String, String> answers, int clients, Duration time) throws Exception {
        URI page = demo.address().resolve("/page/answer");
        List<String> wishes = List.copyOf(answers.keySet());
        AtomicInteger wrong = new AtomicInteger();
        long end = System.nanoTime() + time.toNanos();
        double spent = demo.cpuMillis();
        ExecutorService pool = Executors.newFixedThreadPool(clients);
        List<Future<double[]>> all = new ArrayList<>();
        for (int i = 0; i < clients; i++) {
            Random chance = new Random(i);
            Callable<double[]> work = () -> {
                HttpClient client = HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
                List<Double> times = new ArrayList<>();
                while (System.nanoTime() < end) {
                    String wish = wishes.get(chance.nextInt(wishes.size()));
                    Timed answer = ask(client, page, wish);
                    wrong.addAndGet(answer.body().equals(answers.get(wish)) ? 0 : 1);
                    times.add(answer.millis());
                }
                return times.stream().mapToDouble(Double::doubleValue).toArray();
            };
            all.add(pool.submit(work));
        }
        List<double[]> found = new ArrayList<>();
        try {
            for (Future<double[]> each : all) {
                found.add(each.get());
            }
        } finally {
            // Where one client fails, the others would go on and keep the program from ending.
            pool.shutdownNow();
        }
        double cpu = demo.cpuMillis() - spent;
        double[] times = found.stream().flatMapToDouble(Arrays::stream).sorted().toArray();
        out.printf("%d clients: %.0f answers a second, median %.1f ms, 95 %% %.1f ms, %.1f ms of the server's processor time each, other than for one client: %d of %d%n", clients,
                times.length / (double) time.toSeconds(), times[times.length / 2], times[times.length * 95 / 100], cpu / times.length, wrong.get(), times.length);
    }

    private record Timed(String body, double millis) {
    }

    private static double timed(HttpClient client, URI page, String wish) {
        try {
            return ask(client, page, wish).millis();
        } catch (IOException | InterruptedException broken) {
            throw new IllegalStateException(broken);
        }
    }

    private static Timed ask(HttpClient client, URI page, String wish) throws IOException, InterruptedException {
        long begun = System.nanoTime();
        var reply = client.send(HttpRequest.newBuilder(page).header("Content-Type", "application/yaml").POST(BodyPublishers.ofString(wish)).build(),
                BodyHandlers.ofString());
        if (reply.statusCode() != 200) {
            throw new IllegalStateException(reply.statusCode() + " " + reply.body());
        }
        return new Timed(reply.body(), (System.nanoTime() - begun) / 1e6);
    }
}
