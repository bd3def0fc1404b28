// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class HashLanesTest {
    private record Text(byte[] bytes) implements HashLanes.Message {
        @Override
        public int length() {
            return bytes.length;
        }

        @Override
        public void copyTo(byte[] target, int at) {
            System.arraycopy(bytes, 0, target, at, bytes.length);
        }
    }

    private final HashLanes lanes = new HashLanes();

    /** NIST, examples for FIPS 180: SHA-256 of one block, of two blocks, and of a million times "a" (FIPS 180-2, B.1 to B.3). */
    @Test
    void givesTheHashesOfTheStandardsExamples() {
        List<String> hashes = hashes(
                Stream.of("a".repeat(1_000_000), "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", "abc")
                        .map(text -> text.getBytes(StandardCharsets.US_ASCII))
                        .toList());
        assertEquals(
                List.of(
                        "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
                        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
                        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"),
                hashes);
    }

    /** Each length up to five blocks, among them those where the padding begins another block; in full lanes and in a few. */
    @Test
    void givesTheHashesOfThePlatformsDigest() {
        Random random = new Random(1804);
        for (int messages : new int[] {1, 2, 17, 320, HashLanes.LANES}) {
            List<byte[]> texts = new ArrayList<>();
            for (int length = messages - 1; length >= 0; length--) {
                byte[] text = new byte[length % 321];
                random.nextBytes(text);
                texts.add(text);
            }
            texts.sort(Comparator.comparingInt((byte[] text) -> text.length).reversed());
            assertEquals(texts.stream().map(HashLanesTest::digest).toList(), hashes(texts), messages + " messages");
        }
    }

    @Test
    void knowsHowManyBlocksALengthTakes() {
        int[] lengths = {0, 55, 56, 63, 64, 119, 120};
        int[] blocks = IntStream.of(lengths).map(HashLanes::blocks).toArray();
        assertArrayEquals(new int[] {1, 1, 2, 2, 2, 2, 3}, blocks);
    }

    private List<String> hashes(List<byte[]> texts) {
        String[] hashes = new String[texts.size()];
        lanes.hash(
                texts.stream().map(Text::new).toList(),
                (message, hash) -> hashes[message] = HexFormat.of().formatHex(hash));
        return List.of(hashes);
    }

    private static String digest(byte[] text) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(text));
        } catch (NoSuchAlgorithmException missing) {
            throw new AssertionError(missing);
        }
    }
}
