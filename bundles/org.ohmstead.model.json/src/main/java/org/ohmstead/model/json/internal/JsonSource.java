// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Supplier;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.units.files.PlainFiles;
import org.ohmstead.units.text.Messages;

/** A JSON text with the name that it goes by in messages. */
public final class JsonSource {
    private static final Messages TEXTS = Messages.of(JsonSource.class);
    /** The largest file that is read, in bytes: far above what a project needs, and far below what would fill the memory. */
    static final int LARGEST_BYTES = 16 * 1024 * 1024;

    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private final Supplier<String> label;
    private final String text;
    private final String sha256;

    private JsonSource(Supplier<String> label, String text, byte[] content) {
        this.label = label;
        this.text = text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
        this.sha256 = Sha256.hex(content);
    }

    /** Takes a text as it is. */
    public static JsonSource ofText(String label, String text) {
        return new JsonSource(() -> label, text, text.getBytes(StandardCharsets.UTF_8));
    }

    /** Takes a text as it is, which in messages goes by what one of this package's texts says. */
    public static JsonSource named(String key, String text) {
        return new JsonSource(() -> TEXTS.text(key), text, text.getBytes(StandardCharsets.UTF_8));
    }

    /** Reads a file as UTF-8. */
    public static JsonSource ofFile(Path file) throws ProjectFileException {
        String label = label(file);
        if (Files.isDirectory(file)) {
            throw new ProjectFileException(label, TEXTS.text("file.folder", file), null);
        }
        if (!Files.exists(file)) {
            throw new ProjectFileException(label, TEXTS.text("file.none", file), null);
        }
        byte[] content;
        try (InputStream in = PlainFiles.open(file)) {
            content = in.readNBytes(LARGEST_BYTES + 1);
        } catch (IOException failure) {
            throw new ProjectFileException(
                    label, TEXTS.text("file.unreadable", file, AtomicFile.reason(failure)), failure);
        }
        if (content.length > LARGEST_BYTES) {
            throw new ProjectFileException(
                    label, TEXTS.text("file.tooLarge", file, String.valueOf(LARGEST_BYTES / (1024 * 1024))), null);
        }
        return new JsonSource(() -> label, decode(label, content), content);
    }

    /** Returns how a file is called in messages: with its folder when that is a project's. */
    public static String label(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null || folder.getFileName() == null) {
            return String.valueOf(file.getFileName());
        }
        String folderName = folder.getFileName().toString();
        return folderName.endsWith(".ohmstead")
                ? folderName + "/" + file.getFileName()
                : String.valueOf(file.getFileName());
    }

    private static String decode(String label, byte[] content) throws ProjectFileException {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(content);
        CharBuffer out = CharBuffer.allocate(content.length);
        CoderResult result = decoder.decode(in, out, true);
        String text = out.flip().toString();
        if (result.isError()) {
            int line = 1 + (int) text.chars().filter(c -> c == '\n').count();
            int column = text.length() - text.lastIndexOf('\n');
            throw new ProjectFileException(label, line, column, JsonPaths.ROOT, TEXTS.text("file.notUtf8"), null);
        }
        return text;
    }

    /** Returns the whole text as a tree. */
    public JsonNode parse() throws ProjectFileException {
        if (text.isBlank()) {
            throw new ProjectFileException(label(), TEXTS.text("file.empty", label()), null);
        }
        return TreeParser.parse(this);
    }

    /** Returns the SHA-256 of the bytes, 64 hexadecimal digits. */
    public String sha256() {
        return sha256;
    }

    /** Returns how the text is called in messages. */
    public String label() {
        return label.get();
    }

    String text() {
        return text;
    }

    /** Returns a failure about the value at a path, or about the object or list around it when it is missing. */
    ProjectFileException fault(String path, String sentence) {
        return fault(path, sentence, null);
    }

    ProjectFileException fault(String path, String sentence, Throwable cause) {
        Place place = Place.find(text, path);
        return new ProjectFileException(label(), place.line(), place.column(), path, sentence, cause);
    }
}
