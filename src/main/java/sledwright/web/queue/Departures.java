package sledwright.web.queue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.CancelledKeyException;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.ClosedSelectorException;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.channels.SocketChannel;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.server.Request;

/**
 * Notices who goes away before the answer has come. The server itself looks at a connection again only when it has something to send, which
 * may be minutes after; so the system is asked whether a connection has something to read, and where it has, but not a single byte, its
 * other end is gone. Nothing is read here.
 */
public final class Departures implements AutoCloseable {

    /** After a connection is closed its last resources are given back at the next look. */
    private static final long LOOKS_EVERY_MILLIS = 100;

    /** A visit whose connection is watched, and whether that once looked closed. */
    private static final class Watched {
        private final Visit visit;
        private boolean looksGone;

        private Watched(Visit visit) {
            this.visit = visit;
        }
    }

    private final Selector selector;

    public Departures() {
        try {
            selector = Selector.open();
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        Thread looking = new Thread(this::look, "departures");
        looking.setDaemon(true);
        looking.start();
    }

    /** Ends a visit when its connection goes; its request was read in full before. */
    void watch(Request request, Visit visit) {
        EndPoint end = request.getConnectionMetaData().getConnection().getEndPoint();
        if (!(end.getTransport() instanceof SocketChannel channel)) {
            return;
        }
        try {
            SelectionKey before = channel.keyFor(selector);
            if (before == null) {
                channel.register(selector, SelectionKey.OP_READ, new Watched(visit));
            } else {
                before.attach(new Watched(visit));
                before.interestOps(SelectionKey.OP_READ);
            }
            selector.wakeup();
        } catch (ClosedChannelException | CancelledKeyException gone) {
            visit.end();
        }
        Request.addCompletionListener(request, done -> rest(channel, visit));
    }

    /** What comes next over that connection is another request. */
    private void rest(SocketChannel channel, Visit visit) {
        SelectionKey key = channel.keyFor(selector);
        if (key != null && key.attachment() instanceof Watched watched && watched.visit == visit) {
            rest(key);
        }
    }

    private static void rest(SelectionKey key) {
        try {
            key.interestOps(0);
            key.attach(null);
        } catch (CancelledKeyException closed) {
            // So nothing is waited for any more.
        }
    }

    private void look() {
        try {
            while (selector.isOpen()) {
                selector.select(Departures::seen, selector.keys().isEmpty() ? 0 : LOOKS_EVERY_MILLIS);
            }
        } catch (IOException | ClosedSelectorException ended) {
            // The server has ended, or the system has no more to say of connections; answers come as ever.
        }
    }

    /**
     * What was seen of a connection may be the request itself, read since then, which leaves as little behind as an end does. An end is
     * seen again.
     */
    private static void seen(SelectionKey key) {
        if (key.attachment() instanceof Watched watched && isGone((SocketChannel) key.channel())) {
            if (!watched.looksGone) {
                watched.looksGone = true;
                return;
            }
            watched.visit.end();
        }
        rest(key);
    }

    private static boolean isGone(SocketChannel channel) {
        try {
            return channel.socket().getInputStream().available() == 0;
        } catch (IOException closed) {
            return true;
        }
    }

    @Override
    public void close() {
        try {
            selector.close();
        } catch (IOException ended) {
            // Nothing is left to be given back.
        }
    }
}
