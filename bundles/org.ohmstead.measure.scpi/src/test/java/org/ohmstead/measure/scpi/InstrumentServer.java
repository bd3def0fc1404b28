// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/** An instrument on a port of its own of this machine, which does with each line what its behaviour says. */
final class InstrumentServer implements AutoCloseable {
    /** What it does with a line. */
    interface Behaviour {
        void hear(String line, Reply reply) throws IOException, InterruptedException;
    }

    /** Where answers go. */
    static final class Reply {
        private final Socket socket;
        private final OutputStream stream;
        private final CountDownLatch closing;

        private Reply(Socket socket, CountDownLatch closing) throws IOException {
            this.socket = socket;
            this.stream = socket.getOutputStream();
            this.closing = closing;
        }

        void line(String text) throws IOException {
            raw((text + "\n").getBytes(StandardCharsets.ISO_8859_1));
        }

        void raw(byte[] bytes) throws IOException {
            stream.write(bytes);
            stream.flush();
        }

        void block(byte[] data) throws IOException {
            String length = Integer.toString(data.length);
            ByteArrayOutputStream all = new ByteArrayOutputStream();
            all.writeBytes(("#" + length.length() + length).getBytes(StandardCharsets.US_ASCII));
            all.writeBytes(data);
            all.write('\n');
            raw(all.toByteArray());
        }

        void hangUp() throws IOException {
            socket.close();
        }

        /** Does nothing for a while, or until the server closes. */
        void pause(long millis) throws InterruptedException {
            closing.await(millis, TimeUnit.MILLISECONDS);
        }
    }

    private final ServerSocket listening;
    private final Behaviour behaviour;
    private final boolean oneAtATime;
    private final CountDownLatch closing = new CountDownLatch(1);
    private final List<String> heard = new CopyOnWriteArrayList<>();
    private final List<Socket> sockets = new CopyOnWriteArrayList<>();
    private final AtomicInteger links = new AtomicInteger();

    InstrumentServer(Behaviour behaviour) throws IOException {
        this(behaviour, false);
    }

    /** Makes a server that, if wanted, serves one link and leaves others waiting. */
    InstrumentServer(Behaviour behaviour, boolean oneAtATime) throws IOException {
        this.behaviour = behaviour;
        this.oneAtATime = oneAtATime;
        listening = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        start(this::accept);
    }

    ScpiAddress address() {
        return new ScpiAddress(listening.getInetAddress().getHostAddress(), listening.getLocalPort());
    }

    /** Returns all lines so far, in the order they came. */
    List<String> heard() {
        return List.copyOf(heard);
    }

    int links() {
        return links.get();
    }

    private void start(Runnable work) {
        Thread thread = new Thread(work, "simulated instrument");
        thread.setDaemon(true);
        thread.start();
    }

    private void accept() {
        try {
            while (!listening.isClosed()) {
                Socket socket = listening.accept();
                sockets.add(socket);
                links.incrementAndGet();
                if (oneAtATime) {
                    serve(socket);
                } else {
                    start(() -> serve(socket));
                }
            }
        } catch (IOException closed) {
            closing.countDown();
        }
    }

    private void serve(Socket socket) {
        try (socket) {
            // The system may let one more in while the door is being closed.
            if (closing.getCount() == 0) {
                return;
            }
            socket.setTcpNoDelay(true);
            InputStream in = socket.getInputStream();
            Reply reply = new Reply(socket, closing);
            StringBuilder line = new StringBuilder();
            for (int each = in.read(); each >= 0; each = in.read()) {
                if (each != '\n') {
                    line.append((char) each);
                    continue;
                }
                String whole = line.toString();
                line.setLength(0);
                heard.add(whole);
                behaviour.hear(whole, reply);
            }
        } catch (IOException | InterruptedException gone) {
            sockets.remove(socket);
        }
    }

    @Override
    public void close() throws IOException {
        closing.countDown();
        listening.close();
        for (Socket socket : sockets) {
            socket.close();
        }
    }
}
