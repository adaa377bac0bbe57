package sledwright.web.door;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.SocketAddress;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.eclipse.jetty.server.Request;

/** Where a request comes from, as far as tries at logging in are counted by it. */
final class Sender {

    private static final int SIX_BYTES = 16;
    private static final int NETWORK_BYTES = 8;
    private static final int LONGEST = 64;

    private Sender() {
    }

    /**
     * The network of an IPv6 address, since one customer has many of those; otherwise the address. What comes from this machine itself may
     * come through a server before this one, which says for whom it asks: what it added last counts, for the rest may be invented.
     */
    static String of(Request request) {
        SocketAddress from = request.getConnectionMetaData().getRemoteSocketAddress();
        if (!(from instanceof InetSocketAddress socket) || socket.getAddress() == null) {
            return "";
        }
        List<String> forwarded = request.getHeaders().getValuesList("X-Forwarded-For");
        if (socket.getAddress().isLoopbackAddress() && !forwarded.isEmpty()) {
            String all = forwarded.get(forwarded.size() - 1);
            String last = all.substring(all.lastIndexOf(',') + 1).strip();
            return last.length() <= LONGEST ? last : last.substring(0, LONGEST);
        }
        return network(socket.getAddress());
    }

    private static String network(InetAddress address) {
        byte[] bytes = address.getAddress();
        return HexFormat.of().formatHex(bytes.length == SIX_BYTES ? Arrays.copyOf(bytes, NETWORK_BYTES) : bytes);
    }
}
