// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.zip.CRC32;

/** Zip files byte by byte, with what no honest program writes (APPNOTE.TXT 6.3, 4.3.7 and 4.3.12). */
final class HandMadeZip {
    private static final int PLAIN_FILE = 0x81A4;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream directory = new ByteArrayOutputStream();
    private final List<String> listed = new ArrayList<>();
    private int count;

    /** Adds a file, stored, and names it in the manifest to be. */
    HandMadeZip file(String name, byte[] content) throws Exception {
        listed.add("{\"name\":\"" + name.replace("\\", "\\\\") + "\",\"bytes\":" + content.length + ",\"sha256\":\""
                + sha256(content) + "\"}");
        return raw(name, content, PLAIN_FILE, 0);
    }

    /** Adds a file with the mode and flags given, without naming it. */
    HandMadeZip raw(String name, byte[] content, int unixMode, int flags) throws IOException {
        CRC32 crc = new CRC32();
        crc.update(content);
        byte[] bytes = name.getBytes(StandardCharsets.UTF_8);
        int place = out.size();
        out.write(le(30).putInt(0x04034b50)
                .putShort((short) 20)
                .putShort((short) (0x800 | flags))
                .putShort((short) 0)
                .putInt(0x5A21_0000)
                .putInt((int) crc.getValue())
                .putInt(content.length)
                .putInt(content.length)
                .putShort((short) bytes.length)
                .putShort((short) 0)
                .array());
        out.write(bytes);
        out.write(content);
        directory.write(le(46).putInt(0x02014b50)
                .putShort((short) (3 << 8 | 20))
                .putShort((short) 20)
                .putShort((short) (0x800 | flags))
                .putShort((short) 0)
                .putInt(0x5A21_0000)
                .putInt((int) crc.getValue())
                .putInt(content.length)
                .putInt(content.length)
                .putShort((short) bytes.length)
                .putShort((short) 0)
                .putShort((short) 0)
                .putShort((short) 0)
                .putShort((short) 0)
                .putInt(unixMode << 16)
                .putInt(place)
                .array());
        directory.write(bytes);
        count++;
        return this;
    }

    /** Adds the manifest of what was named, and writes the zip. */
    Path write(Path target, String headHash) throws Exception {
        String manifest = "{\"format\":\"ohmstead-project\",\"formatVersion\":1,\"softwareVersion\":\"0.1.0\","
                + "\"packedAt\":\"2026-11-26T12:00:00Z\",\"title\":\"Kestrel\",\"headHash\":\"" + headHash
                + "\",\"entries\":0,\"files\":[" + String.join(",", listed) + "]}";
        raw("manifest.json", manifest.getBytes(StandardCharsets.UTF_8), PLAIN_FILE, 0);
        int place = out.size();
        out.write(directory.toByteArray());
        out.write(le(22).putInt(0x06054b50)
                .putInt(0)
                .putShort((short) count)
                .putShort((short) count)
                .putInt(directory.size())
                .putInt(place)
                .putShort((short) 0)
                .array());
        return Files.write(target, out.toByteArray());
    }

    static String sha256(byte[] content) throws Exception {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
    }

    private static ByteBuffer le(int bytes) {
        return ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }
}
