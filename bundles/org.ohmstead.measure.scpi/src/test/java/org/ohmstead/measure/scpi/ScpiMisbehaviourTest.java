// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.measure.MeasurementException;

class ScpiMisbehaviourTest {
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
    void tellsOfSilence() throws Exception {
        assertSays(
                failure((line, reply) -> {}, c -> c.query("VOLT?")),
                "sent nothing within 0.25 s",
                "\"VOLT?\"",
                "command set");
        assertSays(failure((line, reply) -> {}, c -> c.queryBlock("CURVE?")), "sent nothing within 0.25 s");
    }

    @Test
    void tellsOfHalfALine() throws Exception {
        assertSays(
                failure(
                        (line, reply) -> reply.raw("12.5".getBytes(StandardCharsets.US_ASCII)),
                        c -> c.queryNumber("VOLT?")),
                "sent \"12.5\" without an end of line within 0.25 s");
    }

    @Test
    void tellsOfALineWithoutEndAndTakesNoMoreOfIt() throws Exception {
        byte[] much = new byte[5000];
        Arrays.fill(much, (byte) '7');
        assertSays(
                failure(
                        (line, reply) -> {
                            for (int i = 0; i < 100_000; i++) {
                                reply.raw(much);
                            }
                        },
                        c -> c.query("VOLT?")),
                "a line of more than 1000 characters, beginning \"7777");
    }

    @Test
    void tellsOfGarbage() throws Exception {
        assertSays(
                failure((line, reply) -> reply.raw(new byte[] {1, 2, (byte) 0x80, 0, '\n'}), c -> c.query("VOLT?")),
                "something that is no text");
        assertSays(
                failure((line, reply) -> reply.line("hello"), c -> c.queryNumber("VOLT?")), "\"hello\" where a number");
        assertSays(failure((line, reply) -> reply.line(""), c -> c.queryNumber("VOLT?")), "where a number");
        assertSays(
                failure((line, reply) -> reply.line("hello"), c -> c.queryBlock("CURVE?")), "\"hello\" where a block");
        assertSays(failure((line, reply) -> reply.line("hello"), ScpiConnection::identify), "instead of maker, model");
        assertSays(failure((line, reply) -> reply.line("9.9E37"), c -> c.queryNumber("VOLT?")), "overloaded", "range");
        assertSays(
                failure((line, reply) -> reply.line("0"), c -> {
                    c.finish(Duration.ofSeconds(1));
                    return null;
                }),
                "where 1 is due");
    }

    // Said too long, said too short, said beyond all bounds, no digits, no end behind.
    @ParameterizedTest
    @ValueSource(
            strings = {
                "#3100abc|announced a block of 100 bytes, but sent only",
                "#13abcdefg\n|announced a block of 3 bytes, but more came",
                "#9999999999|announced a block of 999999999 bytes, more than the 100000",
                "#x3abc\n|whose head has no digit",
                "#2a3abc\n|whose head has no digit",
                "#|stopped within the head",
                "#13abc|no end of line behind a block of 3 bytes",
                "#0abc|without an end"
            })
    void tellsOfBlocksThatAreNotAsAnnounced(String given) throws Exception {
        String[] cut = given.split("\\|");
        assertSays(
                failure(
                        (line, reply) -> reply.raw(cut[0].getBytes(StandardCharsets.ISO_8859_1)),
                        c -> c.queryBlock("CURVE?")),
                cut[1]);
    }

    @Test
    void endsAnEndlessBlockOfUnsaidLength() throws Exception {
        byte[] much = new byte[5000];
        assertSays(
                failure(
                        (line, reply) -> {
                            reply.raw("#0".getBytes(StandardCharsets.US_ASCII));
                            for (int i = 0; i < 100_000; i++) {
                                reply.raw(much);
                            }
                        },
                        c -> c.queryBlock("CURVE?")),
                "did not end within");
    }

    @Test
    void aDribbleDoesNotOutliveTheWait() throws Exception {
        long before = System.nanoTime();
        assertSays(
                failure(
                        (line, reply) -> {
                            for (int i = 0; i < 1000; i++) {
                                reply.raw(new byte[] {'1'});
                                reply.pause(20);
                            }
                        },
                        c -> c.query("VOLT?")),
                "without an end of line within 0.25 s");
        // The wait is for the whole line: a byte every 20 ms would go on for 20 s.
        assertTrue(System.nanoTime() - before < TimeUnit.SECONDS.toNanos(3));
        assertSays(
                failure(
                        (line, reply) -> {
                            reply.raw("#41000".getBytes(StandardCharsets.US_ASCII));
                            for (int i = 0; i < 1000; i++) {
                                reply.raw(new byte[] {'1'});
                                reply.pause(20);
                            }
                        },
                        c -> c.queryBlock("CURVE?")),
                "announced a block of 1000 bytes, but sent only");
    }

    @Test
    void anyBytesEndInAnAnswerOrASentenceWithinTheTime() throws Exception {
        Random random = new Random(4711);
        AtomicReference<byte[]> next = new AtomicReference<>(new byte[0]);
        try (InstrumentServer server = new InstrumentServer((line, reply) -> {
                    reply.raw(next.get());
                    reply.hangUp();
                });
                ScpiConnection connection = ScpiConnection.open(server.address(), QUICK)) {
            for (int i = 0; i < 300; i++) {
                byte[] bytes = bytes(random);
                next.set(bytes);
                boolean block = random.nextBoolean();
                String what = i + ": " + Arrays.toString(bytes);
                assertTimeoutPreemptively(BOUND, () -> answeredOrToldOf(connection, block), what);
            }
        }
    }

    private static void answeredOrToldOf(ScpiConnection connection, boolean block) throws InterruptedException {
        try {
            Object answer = block ? connection.queryBlock("CURVE?") : connection.query("VOLT?");
            assertTrue(answer != null);
        } catch (MeasurementException told) {
            assertSays(told.getMessage(), "The instrument at ", "?\". ");
        }
    }

    private static byte[] bytes(Random random) throws IOException {
        String[] heads = {"", "#", "#0", "#13", "#215", "#42000", "12", "\"", "\r\n", "#0\n"};
        byte[] head = heads[random.nextInt(heads.length)].getBytes(StandardCharsets.US_ASCII);
        byte[] bytes = new byte[head.length + random.nextInt(random.nextInt(10) == 0 ? 3000 : 30)];
        random.nextBytes(bytes);
        System.arraycopy(head, 0, bytes, 0, head.length);
        if (random.nextBoolean() && bytes.length > 0) {
            bytes[bytes.length - 1] = '\n';
        }
        return bytes;
    }
}
