// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.units.text.Messages;

/**
 * The list of contents at the end of a zip file (APPNOTE.TXT 6.3, 4.3.12 to 4.3.16), read for what the platform does not show: names
 * that stand twice, links, and what is encrypted.
 */
final class ZipDirectory {
    private static final Messages TEXTS = Messages.of(ZipDirectory.class);
    private static final int END_MARK = 0x06054b50;
    private static final int END_BYTES = 22;
    private static final int LOCATOR_MARK = 0x07064b50;
    private static final int LOCATOR_BYTES = 20;
    private static final int END64_MARK = 0x06064b50;
    private static final int END64_BYTES = 56;
    private static final int ITEM_MARK = 0x02014b50;
    private static final int ITEM_BYTES = 46;
    private static final int LONGEST_COMMENT = 0xFFFF;
    private static final int MOST_DIRECTORY_BYTES = 64 << 20;
    private static final int SYSTEM_UNIX = 3;
    private static final int SYSTEM_MACOS = 19;
    private static final int FILE_TYPE = 0xF000;
    private static final int PLAIN_FILE = 0x8000;
    private static final int FOLDER = 0x4000;
    private static final int ENCRYPTED = 1;
    private static final int UTF8 = 0x800;

    private ZipDirectory() {}

    /**
     * Something in the zip.
     *
     * @param name its name
     * @param link whether it is a link or another thing that is neither file nor folder
     * @param encrypted whether it is encrypted
     */
    record Item(String name, boolean link, boolean encrypted) {}

    /** Reads the list of contents. */
    static List<Item> read(Path file) throws IOException, ExchangeException {
        try (SeekableByteChannel channel = Files.newByteChannel(file)) {
            long size = channel.size();
            int tailBytes = (int) Math.min(size, END_BYTES + LONGEST_COMMENT + LOCATOR_BYTES);
            ByteBuffer tail = read(channel, size - tailBytes, tailBytes);
            int end = findEnd(tail);
            if (end < 0) {
                throw damaged(file, TEXTS.text("zip.noList"));
            }
            long count = tail.getShort(end + 10) & 0xFFFFL;
            long bytes = tail.getInt(end + 12) & 0xFFFFFFFFL;
            long offset = tail.getInt(end + 16) & 0xFFFFFFFFL;
            boolean large = count == 0xFFFF || bytes == 0xFFFFFFFFL || offset == 0xFFFFFFFFL;
            if (large && end >= LOCATOR_BYTES && tail.getInt(end - LOCATOR_BYTES) == LOCATOR_MARK) {
                long place = tail.getLong(end - LOCATOR_BYTES + 8);
                requireInside(file, place, END64_BYTES, size);
                ByteBuffer end64 = read(channel, place, END64_BYTES);
                if (end64.getInt(0) != END64_MARK) {
                    throw damaged(file, TEXTS.text("zip.brokenList"));
                }
                count = end64.getLong(32);
                bytes = end64.getLong(40);
                offset = end64.getLong(48);
            }
            if (bytes < 0 || bytes > MOST_DIRECTORY_BYTES) {
                throw damaged(file, TEXTS.text("zip.longList"));
            }
            requireInside(file, offset, bytes, size);
            return items(file, read(channel, offset, (int) bytes), count);
        }
    }

    private static void requireInside(Path file, long place, long bytes, long size) throws ExchangeException {
        if (place < 0 || bytes < 0 || place > size - bytes) {
            throw damaged(file, TEXTS.text("zip.listOutside"));
        }
    }

    private static ByteBuffer read(SeekableByteChannel channel, long place, int bytes) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
        channel.position(place);
        while (buffer.hasRemaining() && channel.read(buffer) >= 0) {
            continue;
        }
        return buffer.rewind();
    }

    private static int findEnd(ByteBuffer tail) {
        for (int place = tail.limit() - END_BYTES; place >= 0; place--) {
            boolean fits = tail.getInt(place) == END_MARK
                    && place + END_BYTES + (tail.getShort(place + 20) & 0xFFFF) == tail.limit();
            if (fits) {
                return place;
            }
        }
        return -1;
    }

    private static List<Item> items(Path file, ByteBuffer directory, long count) throws ExchangeException {
        List<Item> items = new ArrayList<>();
        int place = 0;
        while (place + ITEM_BYTES <= directory.limit() && directory.getInt(place) == ITEM_MARK) {
            int system = directory.get(place + 5);
            int flags = directory.getShort(place + 8);
            int nameBytes = directory.getShort(place + 28) & 0xFFFF;
            int extraBytes = directory.getShort(place + 30) & 0xFFFF;
            int commentBytes = directory.getShort(place + 32) & 0xFFFF;
            int next = place + ITEM_BYTES + nameBytes + extraBytes + commentBytes;
            if (next > directory.limit()) {
                throw damaged(file, TEXTS.text("zip.brokenList"));
            }
            Charset charset = (flags & UTF8) != 0 ? StandardCharsets.UTF_8 : StandardCharsets.ISO_8859_1;
            String name = new String(directory.array(), place + ITEM_BYTES, nameBytes, charset);
            int type = directory.getInt(place + 38) >>> 16 & FILE_TYPE;
            boolean unix = system == SYSTEM_UNIX || system == SYSTEM_MACOS;
            boolean plain = type == 0 || type == PLAIN_FILE || type == FOLDER;
            items.add(new Item(name, unix && !plain, (flags & ENCRYPTED) != 0));
            place = next;
        }
        if (place != directory.limit() || items.size() != count) {
            throw damaged(file, TEXTS.text("zip.brokenList"));
        }
        return items;
    }

    private static ExchangeException damaged(Path file, String how) {
        return ExchangeException.refused(TEXTS.text("zip.damaged", file.getFileName(), how));
    }
}
