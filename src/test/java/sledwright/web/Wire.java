package sledwright.web;

import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;

/** A client that says exactly what a test wants said, right or wrong. */
public final class Wire {

    private static final int PATIENCE_MS = 20_000;

    /** What came back. */
    public record Reply(int status, String head, String body) {

        static Reply of(byte[] bytes) {
            String text = new String(bytes, StandardCharsets.UTF_8);
            int end = text.indexOf("\r\n\r\n");
            return end < 0 ? new Reply(0, text, "")
                    : new Reply(Integer.parseInt(text.substring(9, 12)), text.substring(0, end), text.substring(end + 4));
        }
    }

    private Wire() {
    }

    /** A question as a program asks it. */
    public static Reply post(URI server, String path, String type, String body, String... headers) {
        byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
        String more = headers.length == 0 ? "" : String.join("\r\n", headers) + "\r\n";
        return say(server, "POST %s HTTP/1.1\r\nHost: %s\r\nConnection: close\r\nContent-Type: %s\r\nContent-Length: %s\r\n%s\r\n%s"
                .formatted(path, server.getAuthority(), type, bytes.length, more, body));
    }

    public static Reply get(URI server, String path, String... headers) {
        String more = headers.length == 0 ? "" : String.join("\r\n", headers) + "\r\n";
        return say(server, "GET %s HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n%s\r\n".formatted(path, server.getAuthority(), more));
    }

    /** Bytes as they are, and all that comes back until the server closes. */
    public static Reply say(URI server, String text) {
        try (Socket socket = open(server)) {
            OutputStream out = socket.getOutputStream();
            out.write(text.getBytes(StandardCharsets.UTF_8));
            out.flush();
            return Reply.of(socket.getInputStream().readAllBytes());
        } catch (IOException broken) {
            throw new AssertionError(broken);
        }
    }

    /** A connection on which nothing has been said. */
    public static Socket open(URI server) throws IOException {
        Socket socket = new Socket(server.getHost(), server.getPort());
        socket.setSoTimeout(PATIENCE_MS);
        return socket;
    }
}
