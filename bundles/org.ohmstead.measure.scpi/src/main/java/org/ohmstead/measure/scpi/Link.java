// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.io.Closeable;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.net.UnknownHostException;
import java.nio.ByteBuffer;
import java.nio.channels.AsynchronousCloseException;
import java.nio.channels.CancelledKeyException;
import java.nio.channels.ClosedSelectorException;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.channels.SocketChannel;
import org.ohmstead.units.text.Messages;

/**
 * A TCP link on which every wait has an end and obeys interrupts. One thread reads; any thread may write, a whole command at a time, and
 * close.
 */
final class Link implements Closeable {
    private static final Messages TEXTS = Messages.of(Link.class);
    private static final long NANOS_PER_MILLI = 1_000_000;

    private final SocketChannel channel;
    private final Selector selector;

    private Link(SocketChannel channel, Selector selector) {
        this.channel = channel;
        this.selector = selector;
    }

    static Link connect(ScpiAddress address, long deadline) throws IOException, InterruptedException {
        InetSocketAddress where = new InetSocketAddress(address.host(), address.port());
        if (where.isUnresolved()) {
            throw new UnknownHostException(TEXTS.text("link.reason.unknown", address.host()));
        }
        Link link = open();
        boolean connected = false;
        try {
            if (!link.channel.connect(where)
                    && !(link.await(SelectionKey.OP_CONNECT, deadline) && link.channel.finishConnect())) {
                throw LinkFault.of(() -> TEXTS.text("link.reason.silent"));
            }
            connected = true;
            return link;
        } finally {
            if (!connected) {
                link.close();
            }
        }
    }

    private static Link open() throws IOException {
        SocketChannel channel = SocketChannel.open();
        boolean opened = false;
        try {
            channel.configureBlocking(false);
            channel.setOption(StandardSocketOptions.TCP_NODELAY, true);
            channel.setOption(StandardSocketOptions.SO_KEEPALIVE, true);
            Selector selector = Selector.open();
            channel.register(selector, 0);
            opened = true;
            return new Link(channel, selector);
        } finally {
            if (!opened) {
                channel.close();
            }
        }
    }

    /** Reads what is there, or waits for the first of it. Returns how much; 0 when nothing came in time, -1 when nothing will come. */
    int read(ByteBuffer into, long deadline) throws IOException, InterruptedException {
        int count = channel.read(into);
        if (count == 0 && await(SelectionKey.OP_READ, deadline)) {
            count = channel.read(into);
        }
        return count;
    }

    /** Writes all of it. Writers must take turns. */
    void write(byte[] bytes, long deadline) throws IOException, InterruptedException {
        ByteBuffer rest = ByteBuffer.wrap(bytes);
        channel.write(rest);
        if (!rest.hasRemaining()) {
            return;
        }
        // Not the selector of the reader, who may be waiting with it.
        try (Selector room = Selector.open()) {
            SelectionKey key = channel.register(room, SelectionKey.OP_WRITE);
            while (rest.hasRemaining()) {
                if (!await(room, key, SelectionKey.OP_WRITE, deadline)) {
                    throw LinkFault.of(() -> TEXTS.text("link.reason.full"));
                }
                channel.write(rest);
            }
        }
    }

    private boolean await(int operation, long deadline) throws IOException, InterruptedException {
        SelectionKey key = channel.keyFor(selector);
        if (key == null || !key.isValid()) {
            throw new AsynchronousCloseException();
        }
        return await(selector, key, operation, deadline);
    }

    private boolean await(Selector with, SelectionKey key, int operation, long deadline)
            throws IOException, InterruptedException {
        try {
            key.interestOps(operation);
            while (true) {
                if (Thread.interrupted()) {
                    throw new InterruptedException(TEXTS.text("link.reason.ended"));
                }
                long left = deadline - System.nanoTime();
                with.selectedKeys().clear();
                int ready = left < NANOS_PER_MILLI ? with.selectNow() : with.select(left / NANOS_PER_MILLI);
                if (!channel.isOpen()) {
                    throw new AsynchronousCloseException();
                }
                if (ready > 0 && key.isValid()) {
                    return true;
                }
                if (deadline - System.nanoTime() < NANOS_PER_MILLI) {
                    return false;
                }
            }
        } catch (ClosedSelectorException | CancelledKeyException closed) {
            throw LinkFault.of(LinkTrouble::closedMeanwhile, closed);
        }
    }

    @Override
    public void close() throws IOException {
        try (selector) {
            channel.close();
        }
    }
}
