// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A network in the way to a server: lets everything through, falls silent, or breaks, as a test wants it. It refuses to have connections
 * encrypted, so that it can see what it breaks; clients on the same computer put up with that.
 */
final class CuttingProxy implements AutoCloseable {
    /** PostgreSQL documentation, "Message Formats", SSLRequest: a length of 8 and this code. */
    private static final int SSL_REQUEST = 80_877_103;

    private final int target;
    private final ServerSocket server;
    private final Set<Socket> sockets = ConcurrentHashMap.newKeySet();
    private final AtomicInteger acknowledgementsToLose = new AtomicInteger();
    private volatile CountDownLatch silence = new CountDownLatch(0);

    CuttingProxy(int target) throws IOException {
        this.target = target;
        this.server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        start("accept", this::accept);
    }

    int port() {
        return server.getLocalPort();
    }

    private static void start(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.start();
    }

    private void accept() {
        while (!server.isClosed()) {
            try {
                Socket client = server.accept();
                sockets.add(client);
                byte[] first = first(client);
                Socket behind = new Socket(InetAddress.getLoopbackAddress(), target);
                sockets.add(behind);
                behind.getOutputStream().write(first);
                start("up", () -> pass(client, behind, true));
                start("down", () -> pass(behind, client, false));
            } catch (IOException nobodyThere) {
                cut();
            }
        }
    }

    /** Returns the first bytes that are for the server, after having refused to encrypt. */
    private static byte[] first(Socket client) throws IOException {
        byte[] first = client.getInputStream().readNBytes(2 * Integer.BYTES);
        if (first.length < 2 * Integer.BYTES || ByteBuffer.wrap(first).getInt(Integer.BYTES) != SSL_REQUEST) {
            return first;
        }
        client.getOutputStream().write('N');
        client.getOutputStream().flush();
        return new byte[0];
    }

    private void pass(Socket from, Socket to, boolean up) {
        byte[] buffer = new byte[8192];
        try {
            InputStream in = from.getInputStream();
            OutputStream out = to.getOutputStream();
            for (int count = in.read(buffer); count >= 0; count = in.read(buffer)) {
                silence.await();
                if (!up
                        && new String(buffer, 0, count, StandardCharsets.ISO_8859_1).contains("COMMIT\0")
                        && acknowledgementsToLose.getAndUpdate(left -> Math.max(0, left - 1)) > 0) {
                    // The server says that it has committed; the client never hears of it.
                    break;
                }
                out.write(buffer, 0, count);
                out.flush();
            }
        } catch (IOException broken) {
            // Broken is what this is for; both ends are closed below.
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        } finally {
            close(from);
            close(to);
        }
    }

    /** Has the next answers to a commit never arrive. */
    void loseAcknowledgements(int count) {
        acknowledgementsToLose.set(count);
    }

    int acknowledgementsLeftToLose() {
        return acknowledgementsToLose.get();
    }

    /** Lets nothing through any more, without breaking anything. */
    void freeze() {
        silence = new CountDownLatch(1);
    }

    /** Lets everything through again. */
    void thaw() {
        silence.countDown();
    }

    /** Breaks all connections at once. */
    void cut() {
        sockets.forEach(this::close);
    }

    private void close(Socket socket) {
        try {
            sockets.remove(socket);
            // With a reset, as when a machine vanishes.
            socket.setSoLinger(true, 0);
            socket.close();
        } catch (IOException closed) {
            // It need not be closed again.
        }
    }

    @Override
    public void close() throws IOException {
        server.close();
        thaw();
        cut();
    }
}
