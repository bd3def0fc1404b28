// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.ohmstead.testlog.chain.ChainedRow;

final class LineBlocksTest {
    private static final ChainedRow UNREADABLE = ChainedRow.chained(1, "note", "N0001", "never", "[]", "");

    private static IndexRow row(long number, String text) {
        IndexRow row = IndexRow.of(UNREADABLE, "B");
        row.value(IndexField.SEQUENCE, number);
        row.word(IndexField.TEXT, text);
        return row;
    }

    @Test
    void readsBackWhatWasWrittenInAnyPortions() throws Exception {
        Random random = new Random(8);
        try (IndexFile file = IndexFile.open(Optional.empty())) {
            IndexFile.Content content = file.content();
            int written = 0;
            while (written < 500) {
                LineBlocks.Writer writer = new LineBlocks.Writer(file, content);
                int portion = random.nextInt(3 * LineBlocks.GROUP);
                for (int at = 0; at < portion; at++) {
                    writer.add(content, row(written, "text " + written));
                    written++;
                }
                writer.write(content);
                content = file.grown(content, written, Map.of());
            }
            LineBlocks.Reader reader = new LineBlocks.Reader(file, content);
            for (int at = written - 1; at >= 0; at--) {
                assertEquals(at, reader.row(at).value(IndexField.SEQUENCE));
                assertEquals("text " + at, reader.row(at).word(IndexField.TEXT));
                assertEquals("B", reader.row(at).word(IndexField.CHAIN));
            }
            int behind = written;
            assertThrows(BlockCode.DamagedException.class, () -> reader.row(behind + LineBlocks.GROUP));
        }
    }

    @Test
    void showsSoMuchOfALongTextAsATableDoes() throws Exception {
        String wide = "\ud83d\udd0a".repeat(300); // two chars each, which are not parted
        assertEquals(
                "\ud83d\udd0a".repeat(100) + "\u2026",
                IndexRow.ofLine(row(1, wide).line()).word(IndexField.TEXT));
    }

    @Test
    void refusesALineThatIsCutOff() {
        byte[] line = row(1, "text").line();
        for (int length = 0; length < line.length; length++) {
            byte[] part = Arrays.copyOf(line, length);
            assertThrows(BlockCode.DamagedException.class, () -> IndexRow.ofLine(part), "length " + length);
        }
    }

    @Test
    void packsAnyBytesAndRefusesDamagedOnes() throws Exception {
        Random random = new Random(9);
        for (int length : new int[] {0, 1, 100, 5000, 300_000}) {
            byte[] noise = new byte[length];
            random.nextBytes(noise);
            assertArrayEquals(noise, BlockCode.packed(BlockCode.pack(noise)));
            assertArrayEquals(new byte[length], BlockCode.packed(BlockCode.pack(new byte[length])));
        }
        byte[] packed = BlockCode.pack(new byte[5000]);
        assertThrows(
                BlockCode.DamagedException.class, () -> BlockCode.packed(Arrays.copyOf(packed, packed.length - 2)));
        assertThrows(BlockCode.DamagedException.class, () -> BlockCode.packed(new byte[4]));
    }
}
