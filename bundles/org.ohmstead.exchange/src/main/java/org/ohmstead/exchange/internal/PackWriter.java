// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.ExchangeProgress;
import org.ohmstead.exchange.PackManifest;
import org.ohmstead.exchange.PackManifest.PackedFile;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.units.text.Messages;

/** Puts the files of a project into one. */
final class PackWriter {
    private static final Messages TEXTS = Messages.of(PackWriter.class);
    private static final int BUFFER_BYTES = 1 << 16;

    private final Path project;
    private final Optional<Path> logCopy;
    private final ExchangeProgress progress;
    private final List<Source> sources = new ArrayList<>();
    private final List<String> leftOut = new ArrayList<>();

    /** A file to be packed. */
    private record Source(Path path, PackedFile packed, long crc) {}

    PackWriter(Path project, Optional<Path> logCopy, ExchangeProgress progress) {
        this.project = project;
        this.logCopy = logCopy;
        this.progress = progress;
    }

    /** Reads every file once, for its size and hash. */
    void collect() throws IOException {
        List<Path> files = new ArrayList<>();
        files.add(project.resolve(ProjectFile.FILE_NAME));
        files.addAll(below(project.resolve(PackPlaces.CAPTURES)));
        files.addAll(below(project.resolve(PackPlaces.SHEETS)));
        int total = 2 * files.size();
        Map<String, String> byFolded = new HashMap<>();
        if (logCopy.isPresent()) {
            add(TestLog.FILE_NAME, logCopy.get());
        }
        for (int index = 0; index < files.size(); index++) {
            progress.stopIfCancelled();
            String name = name(files.get(index));
            progress.step(index, total, name);
            if (PackPlaces.refusal(name).isPresent()) {
                leftOut.add(TEXTS.text("pack.noPlace", name));
                continue;
            }
            // Nobody could unpack both.
            String alike = byFolded.putIfAbsent(PackPlaces.folded(name), name);
            if (alike == null) {
                add(name, files.get(index));
            } else {
                leftOut.add(TEXTS.text("pack.alikeHere", name, alike));
            }
        }
    }

    private void add(String name, Path file) throws IOException {
        CRC32 crc = new CRC32();
        MessageDigest digest = Sha256.digest();
        long bytes = 0;
        try (InputStream in = Files.newInputStream(file)) {
            byte[] buffer = new byte[BUFFER_BYTES];
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                crc.update(buffer, 0, read);
                digest.update(buffer, 0, read);
                bytes += read;
            }
        }
        String hash = Sha256.hex(digest.digest());
        if (PackPlaces.captureHash(name)
                .filter(promised -> !promised.equals(hash))
                .isPresent()) {
            leftOut.add(TEXTS.text("pack.captureChanged", name));
        } else {
            sources.add(new Source(file, new PackedFile(name, bytes, hash), crc.getValue()));
        }
    }

    private List<Path> below(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                    .sorted()
                    .toList();
        }
    }

    private String name(Path file) {
        List<String> parts = new ArrayList<>();
        project.relativize(file).forEach(part -> parts.add(part.toString()));
        return String.join("/", parts);
    }

    /** Returns what goes in. */
    List<PackedFile> files() {
        return sources.stream().map(Source::packed).toList();
    }

    /** Returns what does not go in, each a sentence. */
    List<String> leftOut() {
        return List.copyOf(leftOut);
    }

    /** Writes everything, packed or as it is. */
    void write(PackManifest manifest, boolean packed, OutputStream target) throws IOException, ExchangeException {
        // Not closed: the caller closes the target.
        ZipOutputStream zip = new ZipOutputStream(target, StandardCharsets.UTF_8);
        zip.setLevel(Deflater.BEST_SPEED);
        zip.putNextEntry(new ZipEntry(PackPlaces.MANIFEST));
        zip.write(PackJson.write(manifest).getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
        int total = 2 * sources.size();
        for (int index = 0; index < sources.size(); index++) {
            progress.stopIfCancelled();
            Source source = sources.get(index);
            progress.step(sources.size() + index, total, source.packed().name());
            zip.putNextEntry(entry(source, packed));
            copy(source, zip);
            zip.closeEntry();
        }
        zip.finish();
        progress.step(total, total, "");
    }

    private static ZipEntry entry(Source source, boolean packed) {
        ZipEntry entry = new ZipEntry(source.packed().name());
        if (!packed) {
            entry.setMethod(ZipEntry.STORED);
            entry.setSize(source.packed().bytes());
            entry.setCompressedSize(source.packed().bytes());
            entry.setCrc(source.crc());
        }
        return entry;
    }

    private void copy(Source source, OutputStream out) throws IOException, ExchangeException {
        MessageDigest digest = Sha256.digest();
        long bytes = 0;
        try (InputStream in = Files.newInputStream(source.path())) {
            byte[] buffer = new byte[BUFFER_BYTES];
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                bytes += read;
                if (bytes > source.packed().bytes()) {
                    throw changed(source);
                }
                digest.update(buffer, 0, read);
                out.write(buffer, 0, read);
            }
        }
        if (bytes != source.packed().bytes()
                || !Sha256.hex(digest.digest()).equals(source.packed().sha256())) {
            throw changed(source);
        }
    }

    private static ExchangeException changed(Source source) {
        return ExchangeException.refused(
                TEXTS.text("pack.changed", source.packed().name()));
    }
}
