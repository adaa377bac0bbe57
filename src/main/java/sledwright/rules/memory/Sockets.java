package sledwright.rules.memory;

import java.util.List;
import java.util.stream.Stream;
import sledwright.domain.Build;
import sledwright.domain.Channel;

/** The view of a build by socket that the memory rules share. */
final class Sockets {

    private Sockets() {
    }

    static String name(int socket) {
        return "socket " + (socket + 1);
    }

    static int modules(Build build, int socket) {
        return (int) build.modules().keySet().stream().filter(slot -> slot.socket() == socket).count();
    }

    /** Whether a socket, from 0, carries a processor: they are fitted from the first socket on. */
    static boolean fitted(Build build, int socket) {
        return socket < build.processors().size();
    }

    static Stream<Channel> populatedChannels(Build build) {
        return build.channels().stream().filter(channel -> !channel.filled().isEmpty());
    }

    /** The channels of each socket that holds any module. */
    static Stream<List<Channel>> populated(Build build) {
        return build.sockets().stream().filter(channels -> channels.stream().anyMatch(channel -> !channel.filled().isEmpty()));
    }
}
