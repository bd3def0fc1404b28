// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.measure.MeasurementException;

class ScpiConnectionTest {
    private static final ScpiOptions QUICK = ScpiOptions.USUAL
            .withWaits(Duration.ofSeconds(2), Duration.ofMillis(250))
            .withBlockWait(Duration.ofMillis(600))
            .withBounds(1000, 100_000, 5);
    private static final Duration BOUND = Duration.ofSeconds(10);

    /** Something asked of a connection. */
    private interface Question {
        Object ask(ScpiConnection connection) throws MeasurementException, InterruptedException;
    }

    private static String failure(InstrumentServer.Behaviour behaviour, Question question) throws Exception {
        try (InstrumentServer server = new InstrumentServer(behaviour);
                ScpiConnection connection = ScpiConnection.open(server.address(), QUICK)) {
            MeasurementException failed = assertTimeoutPreemptively(
                    BOUND, () -> assertThrows(MeasurementException.class, () -> question.ask(connection)));
            String message = failed.getMessage();
            assertTrue(message.contains(server.address().toString()), message);
            assertTrue(message.endsWith("."), message);
            return message;
        }
    }

    private static void assertSays(String message, String... words) {
        for (String word : words) {
            assertTrue(message.contains(word), message);
        }
    }

    @Test
    void asksAndIsAnswered() throws Exception {
        byte[] bytes = new byte[70_000];
        new Random(1).nextBytes(bytes);
        try (InstrumentServer server = new InstrumentServer((line, reply) -> {
                    switch (line) {
                        case "*IDN?" -> reply.line("Made-up Workshop,S-1,0,1.0\r");
                        case "*OPC?" -> reply.line("1");
                        case "VOLT?" -> reply.line("+1.440000E+01");
                        case "LIST?" -> reply.line("1,2.5,-3E0");
                        case "TEXT?" -> reply.line("\"a,\"\"b\"\"\"");
                        case "BLOCK?" -> reply.block(bytes);
                        case "EMPTY?" -> reply.block(new byte[0]);
                        default -> {
                            // A command.
                        }
                    }
                });
                ScpiConnection connection = ScpiConnection.open(server.address(), QUICK)) {
            assertEquals("S-1", connection.identify().model());
            connection.reset();
            connection.clear();
            connection.finish(Duration.ofSeconds(1));
            assertEquals(14.4, connection.queryNumber("VOLT?"), 0);
            assertArrayEquals(new double[] {1, 2.5, -3}, connection.queryNumbers("LIST?"));
            assertEquals(List.of("1", "2.5", "-3E0"), connection.queryList("LIST?"));
            assertEquals("a,\"b\"", connection.queryString("TEXT?"));
            assertArrayEquals(bytes, connection.queryBlock("BLOCK?"));
            assertEquals(0, connection.queryBlock("EMPTY?").length);
            connection.command("VOLT 14.4");
            connection.finish(Duration.ofSeconds(1));
            assertEquals(
                    List.of("*IDN?", "*RST", "*CLS", "*OPC?"), server.heard().subList(0, 4));
            assertEquals(1, server.links());
        }
    }

    @Test
    void takesABlockOfUnsaidLengthWithLineFeedsInIt() throws Exception {
        byte[] data = "12\n34\r\n56".getBytes(StandardCharsets.US_ASCII);
        try (InstrumentServer server = new InstrumentServer((line, reply) -> {
                    if (line.equals("*OPC?")) {
                        reply.line("1");
                    } else {
                        reply.raw("#0".getBytes(StandardCharsets.US_ASCII));
                        reply.raw(data);
                        reply.raw(new byte[] {'\n'});
                    }
                });
                ScpiConnection connection = ScpiConnection.open(server.address(), QUICK)) {
            assertArrayEquals(data, connection.queryBlock("CURVE?"));
            connection.finish(Duration.ofSeconds(1));
            assertEquals(1, server.links());
        }
    }

    @Test
    void asksOnceMoreWhenTheLinkDropsInTheMiddle() throws Exception {
        AtomicInteger asked = new AtomicInteger();
        try (InstrumentServer server = new InstrumentServer((line, reply) -> {
                    if (asked.incrementAndGet() == 1) {
                        reply.raw("14".getBytes(StandardCharsets.US_ASCII));
                        reply.hangUp();
                    } else {
                        reply.line("14.4");
                    }
                });
                ScpiConnection connection = ScpiConnection.open(server.address(), QUICK)) {
            assertEquals(14.4, connection.queryNumber("VOLT?"), 0);
            assertEquals(2, server.links());
        }
    }

    @Test
    void givesUpWhenTheLinkDropsTwiceAndNeverRepeatsWhatMustComeOnce() throws Exception {
        AtomicInteger asked = new AtomicInteger();
        InstrumentServer.Behaviour dropping = (line, reply) -> {
            asked.incrementAndGet();
            reply.hangUp();
        };
        assertSays(failure(dropping, c -> c.query("VOLT?")), "dropped the link", "\"VOLT?\"", "network cable");
        assertEquals(2, asked.get());
        assertSays(failure(dropping, c -> c.queryOnce("READ?", Duration.ofSeconds(1))), "dropped the link");
        assertEquals(3, asked.get());
        assertSays(
                failure(
                        (line, reply) -> {
                            reply.raw("#3100abc".getBytes(StandardCharsets.US_ASCII));
                            reply.hangUp();
                        },
                        c -> c.queryBlock("CURVE?")),
                "dropped the link");
    }

    @Test
    void aLateAnswerIsNeverTakenForTheNextOne() throws Exception {
        try (InstrumentServer server = new InstrumentServer((line, reply) -> {
                    if (line.equals("SLOW?")) {
                        reply.pause(400);
                        reply.line("111");
                    } else {
                        reply.line("222");
                    }
                });
                ScpiConnection connection = ScpiConnection.open(server.address(), QUICK)) {
            assertThrows(MeasurementException.class, () -> connection.query("SLOW?"));
            assertEquals("222", connection.query("FAST?"));
            assertEquals(2, server.links());
        }
    }

    @Test
    void throwsAwayWhatComesUnasked() throws Exception {
        CountDownLatch sent = new CountDownLatch(1);
        try (InstrumentServer server = new InstrumentServer((line, reply) -> {
                    if (line.equals("HELLO")) {
                        reply.line("welcome");
                        sent.countDown();
                    } else {
                        reply.line(line);
                    }
                });
                ScpiConnection connection = ScpiConnection.open(server.address(), QUICK)) {
            connection.command("HELLO");
            assertTrue(sent.await(5, TimeUnit.SECONDS));
            assertEquals("A?", connection.query("A?"));
        }
    }

    @Test
    void readsTheErrorQueueUntilItIsEmptyAndNoFurtherThanItsBound() throws Exception {
        AtomicInteger left = new AtomicInteger(3);
        try (InstrumentServer server = new InstrumentServer((line, reply) ->
                        reply.line(left.getAndDecrement() > 0 ? "-222,\"Data out of range\"" : "0,\"No error\""));
                ScpiConnection connection = ScpiConnection.open(server.address(), QUICK)) {
            List<ScpiError> errors = connection.errors("SYSTem:ERRor?");
            assertEquals(3, errors.size());
            assertEquals(new ScpiError(-222, "Data out of range"), errors.get(0));
        }
        AtomicInteger asked = new AtomicInteger();
        String message = failure(
                (line, reply) -> {
                    asked.incrementAndGet();
                    reply.line("-350,\"Queue overflow\"");
                },
                c -> c.errors("SYSTem:ERRor?"));
        assertSays(message, "gave 5 errors", "has still more", "-350 \"Queue overflow\"");
        assertEquals(6, asked.get());
    }

    @Test
    void tellsThatNothingListens() throws Exception {
        ScpiAddress address;
        try (ServerSocket gone = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            address = new ScpiAddress(gone.getInetAddress().getHostAddress(), gone.getLocalPort());
        }
        MeasurementException refused =
                assertThrows(MeasurementException.class, () -> ScpiConnection.open(address, QUICK));
        assertSays(refused.getMessage(), address.toString(), "No link", "Check its address and port");
        MeasurementException unknown = assertThrows(
                MeasurementException.class,
                () -> ScpiConnection.open(new ScpiAddress("no-such-host.invalid", 1), QUICK));
        assertSays(unknown.getMessage(), "no-such-host.invalid:1", "is not known");
    }

    @Test
    void anInterruptEndsTheWaitAtOnce() throws Exception {
        CountDownLatch asked = new CountDownLatch(1);
        AtomicReference<Throwable> end = new AtomicReference<>();
        ScpiOptions patient = QUICK.withWaits(Duration.ofSeconds(2), Duration.ofSeconds(60));
        try (InstrumentServer server = new InstrumentServer((line, reply) -> asked.countDown());
                ScpiConnection connection = ScpiConnection.open(server.address(), patient)) {
            Thread waiting = new Thread(() -> {
                try {
                    connection.query("VOLT?");
                } catch (MeasurementException | InterruptedException ended) {
                    end.set(ended);
                }
            });
            waiting.start();
            assertTrue(asked.await(5, TimeUnit.SECONDS));
            waiting.interrupt();
            waiting.join(3000);
            assertFalse(waiting.isAlive());
            assertTrue(end.get() instanceof InterruptedException, String.valueOf(end.get()));
        }
    }

    @Test
    void closingEndsTheWaitOfAnotherThreadAndASecondCloseDoesNothing() throws Exception {
        CountDownLatch asked = new CountDownLatch(1);
        AtomicReference<Throwable> end = new AtomicReference<>();
        ScpiOptions patient = QUICK.withWaits(Duration.ofSeconds(2), Duration.ofSeconds(60));
        try (InstrumentServer server = new InstrumentServer((line, reply) -> asked.countDown());
                ScpiConnection connection = ScpiConnection.open(server.address(), patient)) {
            Thread waiting = new Thread(() -> {
                try {
                    connection.query("VOLT?");
                } catch (MeasurementException | InterruptedException ended) {
                    end.set(ended);
                }
            });
            waiting.start();
            assertTrue(asked.await(5, TimeUnit.SECONDS));
            connection.close();
            connection.close();
            waiting.join(3000);
            assertFalse(waiting.isAlive());
            assertTrue(end.get() instanceof MeasurementException, String.valueOf(end.get()));
            MeasurementException closed = assertThrows(MeasurementException.class, () -> connection.query("VOLT?"));
            assertSays(closed.getMessage(), "was closed");
        }
    }

    @Test
    void interjectsWithoutCuttingTheQueryOfAThreadThatWaits() throws Exception {
        CountDownLatch asked = new CountDownLatch(1);
        CountDownLatch told = new CountDownLatch(1);
        AtomicReference<String> answer = new AtomicReference<>();
        ScpiOptions patient = QUICK.withWaits(Duration.ofSeconds(2), Duration.ofSeconds(20));
        try (InstrumentServer server = new InstrumentServer((line, reply) -> {
                    if (line.equals("VOLT?")) {
                        asked.countDown();
                        told.await(10, TimeUnit.SECONDS);
                        reply.line("14.4");
                    }
                });
                ScpiConnection connection = ScpiConnection.open(server.address(), patient)) {
            Thread waiting = new Thread(() -> {
                try {
                    answer.set(connection.query("VOLT?"));
                } catch (MeasurementException | InterruptedException ended) {
                    answer.set(ended.getMessage());
                }
            });
            waiting.start();
            assertTrue(asked.await(5, TimeUnit.SECONDS));
            assertTrue(connection.interject(List.of("OUTP OFF", "VOLT 0")));
            told.countDown();
            waiting.join(5000);
            assertEquals("14.4", answer.get());
            assertEquals("1", ready(connection, server));
            assertEquals(List.of("VOLT?", "OUTP OFF", "VOLT 0"), server.heard().subList(0, 3));
        }
    }

    private static String ready(ScpiConnection connection, InstrumentServer server) throws Exception {
        // The commands stand before it on the link, so once it was heard, they were.
        assertThrows(MeasurementException.class, () -> connection.queryOnce("*OPC?", Duration.ofMillis(300)));
        return server.heard().contains("*OPC?") ? "1" : "0";
    }

    @Test
    void sendsNothingThatIsNotAllowedAtTheLastMoment() throws Exception {
        try (InstrumentServer server = new InstrumentServer((line, reply) -> reply.line("1"));
                ScpiConnection connection = ScpiConnection.open(server.address(), QUICK)) {
            MeasurementException refused =
                    assertThrows(MeasurementException.class, () -> connection.command("OUTP ON", () -> false));
            assertSays(refused.getMessage(), "made safe", "OUTP ON");
            connection.finish(Duration.ofSeconds(1));
            assertEquals(List.of("*OPC?"), server.heard());
            assertThrows(IllegalArgumentException.class, () -> connection.command("OUTP ON\nOUTP OFF"));
            assertThrows(IllegalArgumentException.class, () -> connection.command(" "));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "a b", "host:", "host:0", "host:65536", "[::1", "host:12:13", "http://host"})
    void refusesWhatIsNoAddress(String text) {
        MeasurementException refused = assertThrows(MeasurementException.class, () -> ScpiAddress.parse(text));
        assertSays(refused.getMessage(), "192.0.2.7:5025");
    }

    @Test
    void readsAddresses() throws Exception {
        assertEquals(new ScpiAddress("192.0.2.7", 5025), ScpiAddress.parse("192.0.2.7"));
        assertEquals(new ScpiAddress("meter.example", 1234), ScpiAddress.parse(" meter.example:1234 "));
        assertEquals("[2001:db8::7]:99", ScpiAddress.parse("[2001:db8::7]:99").toString());
    }
}
