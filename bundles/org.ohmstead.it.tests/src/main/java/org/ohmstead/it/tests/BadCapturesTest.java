// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Bad captures on the command line: a clear sentence, exit code 3, the file as it was. */
class BadCapturesTest {
    private static final int RATE_HZ = 48_000;

    @TempDir
    private Path folder;

    static Stream<Arguments> badCaptures() {
        byte[] good = wav(4800, t -> 0.5 * Math.sin(2 * Math.PI * 1000 * t));
        byte[] lying = good.clone();
        ByteBuffer.wrap(lying).order(ByteOrder.LITTLE_ENDIAN).putInt(40, 1_000_000_000);
        return Stream.of(
                Arguments.of("truncated.wav", cut(good, 30)),
                Arguments.of("cut-in-half.wav", cut(good, good.length / 2)),
                Arguments.of("lying-size.wav", lying),
                Arguments.of("no-samples.wav", wav(0, t -> 0)),
                Arguments.of("silence.wav", wav(4800, t -> 0)),
                Arguments.of("direct-only.wav", wav(4800, t -> 0.3)),
                Arguments.of("eight-hertz.wav", wav(4800, t -> 0.5 * Math.sin(2 * Math.PI * 8 * t))),
                Arguments.of("empty.wav", new byte[0]),
                Arguments.of("not-a-number.csv", text("time,A\n0,1\n0.001,NaN\n0.002,1\n")),
                Arguments.of("words.csv", text("time;A\n0;1\n0,001;x\n")),
                Arguments.of("uneven.csv", text("0,1\n0.001,2\n0.005,1\n0.0051,2\n")),
                Arguments.of("picture.png", new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10, 0, 0}));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("badCaptures")
    void isRefusedWithASentence(String name, byte[] content) throws IOException {
        Path file = Files.write(folder.resolve(name), content);
        String sentence = Words.run(
                        "analyze", file.toString(), "--volts-per-full-scale", "50", "--load-ohms", "4", "--json")
                .isRefused();
        assertTrue(sentence.contains(name), "the file is not named: " + sentence);
        assertArrayEquals(content, Files.readAllBytes(file));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("badCaptures")
    void isToldOnceAndForText(String name, byte[] content) throws IOException {
        Path file = Files.write(folder.resolve(name), content);
        String sentence = Words.run("analyze", file.toString(), "--volts-per-full-scale", "50", "--load-ohms", "4")
                .isRefused();
        assertTrue(sentence.lines().count() == 1, "more than one line: " + sentence);
    }

    private static byte[] cut(byte[] content, int length) {
        return java.util.Arrays.copyOf(content, length);
    }

    private static byte[] text(String content) {
        return content.getBytes(StandardCharsets.UTF_8);
    }

    /** A 16-bit mono file by the book, made here so that nothing of ours has a hand in it. */
    private static byte[] wav(int samples, DoubleUnaryOperator wave) {
        ByteBuffer buffer = ByteBuffer.allocate(44 + 2 * samples).order(ByteOrder.LITTLE_ENDIAN);
        buffer.put(text("RIFF")).putInt(36 + 2 * samples).put(text("WAVE"));
        buffer.put(text("fmt ")).putInt(16).putShort((short) 1).putShort((short) 1);
        buffer.putInt(RATE_HZ).putInt(2 * RATE_HZ).putShort((short) 2).putShort((short) 16);
        buffer.put(text("data")).putInt(2 * samples);
        for (int i = 0; i < samples; i++) {
            buffer.putShort((short) Math.round(32767 * wave.applyAsDouble(i / (double) RATE_HZ)));
        }
        return buffer.array();
    }
}
