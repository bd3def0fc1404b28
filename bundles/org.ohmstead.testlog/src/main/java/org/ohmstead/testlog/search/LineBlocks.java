// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The lines of a table, each entry's values side by side, a few entries in a block. The columns are made for going through all entries;
 * a page of entries from everywhere would need a block of each column for each of them, and here needs one.
 */
final class LineBlocks {
    /** The slot of the blocks. */
    static final int SLOT = 60;

    /** Entries in a block; a stretch of the columns is a whole number of blocks. */
    static final int GROUP = 32;

    private LineBlocks() {}

    /** Writes lines behind those that are there. */
    static final class Writer {
        private final IndexFile file;
        private final List<byte[]> group = new ArrayList<>();
        private int number;
        private boolean changed;

        /** Goes on behind so many rows. */
        Writer(IndexFile file, IndexFile.Content content) throws SQLException, BlockCode.DamagedException {
            this.file = file;
            this.number = content.rows() / GROUP;
            int begun = content.rows() % GROUP;
            if (begun > 0) {
                group.addAll(lines(file, content, number).subList(0, begun));
            }
        }

        void add(IndexFile.Content content, IndexRow row) throws SQLException {
            group.add(row.line());
            changed = true;
            if (group.size() == GROUP) {
                write(content);
                group.clear();
                number++;
            }
        }

        /** Writes what was added and is not yet written. */
        void write(IndexFile.Content content) throws SQLException {
            if (changed) {
                file.write(content, SLOT, number, block(group));
                changed = false;
            }
        }
    }

    /** Reads lines; keeps the blocks that it has read, so that it is made for one page and thrown away. */
    static final class Reader {
        private final IndexFile file;
        private final IndexFile.Content content;
        private final Map<Integer, List<byte[]>> known = new HashMap<>();

        Reader(IndexFile file, IndexFile.Content content) {
            this.file = file;
            this.content = content;
        }

        /** Returns an entry's values as they were when it came into the index. */
        IndexRow row(int row) throws SQLException, BlockCode.DamagedException {
            int number = row / GROUP;
            List<byte[]> lines = known.get(number);
            if (lines == null) {
                lines = lines(file, content, number);
                known.put(number, lines);
            }
            if (row % GROUP >= lines.size()) {
                throw new BlockCode.DamagedException("a line is missing");
            }
            return IndexRow.ofLine(lines.get(row % GROUP));
        }
    }

    private static List<byte[]> lines(IndexFile file, IndexFile.Content content, int number)
            throws SQLException, BlockCode.DamagedException {
        Optional<byte[]> block = file.read(content, SLOT, number);
        if (block.isEmpty()) {
            throw new BlockCode.DamagedException("a block of lines is missing");
        }
        return lines(BlockCode.packed(block.get()));
    }

    private static byte[] block(List<byte[]> lines) {
        int bytes = Integer.BYTES;
        for (byte[] line : lines) {
            bytes += Integer.BYTES + line.length;
        }
        ByteBuffer out = ByteBuffer.allocate(bytes).putInt(lines.size());
        for (byte[] line : lines) {
            out.putInt(line.length).put(line);
        }
        return BlockCode.pack(out.array());
    }

    private static List<byte[]> lines(byte[] block) throws BlockCode.DamagedException {
        try {
            ByteBuffer in = ByteBuffer.wrap(block);
            int count = in.getInt();
            List<byte[]> lines = new ArrayList<>();
            for (int at = 0; at < count; at++) {
                int length = in.getInt();
                if (length < 0 || length > in.remaining()) {
                    throw new BlockCode.DamagedException("a line that is too short");
                }
                byte[] line = new byte[length];
                in.get(line);
                lines.add(line);
            }
            return lines;
        } catch (BufferUnderflowException tooShort) {
            throw new BlockCode.DamagedException("a block of lines that is too short", tooShort);
        }
    }
}
