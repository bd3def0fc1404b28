// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.measure.MeasurementException;

/** Lets answers in that an instrument might give, through a true link, and tells how they are refused. */
public final class AnswerDoor {
    private static final ScpiOptions OPTIONS = new ScpiOptions(
            Duration.ofSeconds(3),
            Duration.ofSeconds(3),
            Duration.ofSeconds(3),
            Duration.ofMillis(50),
            "\n",
            1 << 12,
            1 << 14,
            32);

    /** What is expected of an instrument. */
    public enum Shape {
        /** A number. */
        NUMBER,
        /** Who it is. */
        IDENTITY,
        /** An entry of its error queue. */
        ERROR,
        /** Samples as text. */
        NUMBERS,
        /** Samples as bytes of all kinds. */
        BLOCK
    }

    private AnswerDoor() {}

    /** Reads all that an instrument sends before it closes the link; returns how it is refused, or empty. */
    public static Optional<String> refusal(byte[] sent, Shape shape) {
        try (ServerSocketChannel server = ServerSocketChannel.open()) {
            server.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0));
            ScpiAddress address =
                    new ScpiAddress("127.0.0.1", ((InetSocketAddress) server.getLocalAddress()).getPort());
            try (Link link = Link.connect(
                            address, System.nanoTime() + OPTIONS.connectWait().toNanos());
                    SocketChannel instrument = server.accept()) {
                // Closed with a reset, so that thousands of links a minute leave nothing waiting.
                instrument.setOption(StandardSocketOptions.SO_LINGER, 0);
                instrument.write(ByteBuffer.wrap(sent));
                instrument.shutdownOutput();
                AnswerReader reader = new AnswerReader(link, OPTIONS);
                reader.expect(OPTIONS.answerWait());
                return refusal(reader, shape);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static Optional<String> refusal(AnswerReader reader, Shape shape) throws IOException, InterruptedException {
        try {
            while (true) {
                answer(reader, shape);
            }
        } catch (AnswerFault e) {
            return Optional.of(e.what() + e.remedy());
        } catch (LinkFault e) {
            return Optional.of(e.getMessage());
        }
    }

    private static void answer(AnswerReader reader, Shape shape) throws AnswerFault, IOException, InterruptedException {
        switch (shape) {
            case NUMBER -> Answer.number(reader.line());
            case IDENTITY -> Answer.identity(reader.line());
            case ERROR -> Answer.error(reader.line());
            case NUMBERS -> Answer.numbers(reader.longLine());
            default -> {
                byte[] block = reader.block();
                for (BlockFormat format : BlockFormat.values()) {
                    samples(block, format);
                }
            }
        }
    }

    private static void samples(byte[] block, BlockFormat format) {
        try {
            for (double sample : format.samples(block, ByteOrder.LITTLE_ENDIAN)) {
                if (!Double.isFinite(sample)) {
                    throw new AssertionError("a sample is " + sample);
                }
            }
        } catch (AnswerFault e) {
            if (e.what().isBlank() || e.remedy().isBlank()) {
                throw new AssertionError("a block is refused without a word");
            }
        }
    }

    /** Reads a command set; returns how it is refused, or empty. */
    public static Optional<String> refusedSet(String text) {
        try {
            CommandSet set = CommandSetReader.read("set", "set.commands", text);
            for (String action : set.actions()) {
                for (CommandLine line : set.lines(action)) {
                    String command = line.filled(Map.of("channel", "1", "volts", "1"));
                    if (command.chars().anyMatch(letter -> letter < ' ')) {
                        throw new AssertionError("a command has a line end in it: " + command);
                    }
                }
            }
            return Optional.empty();
        } catch (MeasurementException e) {
            return Optional.of(e.getMessage());
        }
    }
}
