// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.ExchangeProgress;
import org.ohmstead.exchange.PackLimits;
import org.ohmstead.exchange.PackManifest;
import org.ohmstead.exchange.PackManifest.PackedFile;
import org.ohmstead.units.text.Messages;

/** A packed project, read without trusting it. */
public final class PackReader implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(PackReader.class);
    private static final int MOST_MANIFEST_BYTES = 64 << 20;
    private static final int BUFFER_BYTES = 1 << 16;

    private final String name;
    private final ZipFile zip;
    private final PackLimits limits;
    private final InflationGuard guard;
    private final PackManifest manifest;

    private PackReader(String name, ZipFile zip, PackLimits limits, InflationGuard guard, PackManifest manifest) {
        this.name = name;
        this.zip = zip;
        this.limits = limits;
        this.guard = guard;
        this.manifest = manifest;
    }

    /** Work on a pack, whose failures become refusals. */
    @FunctionalInterface
    public interface Work<T> {
        /** Does it. */
        T run(PackReader pack) throws IOException, ExchangeException;
    }

    /** Opens a pack, checks all names in it and its manifest, and works on it. */
    public static <T> T with(Path file, PackLimits limits, Work<T> work) throws ExchangeException {
        try (PackReader pack = open(file, limits)) {
            return work.run(pack);
        } catch (InflationGuard.TooMuch tooMuch) {
            throw tooMuch.refusal();
        } catch (ZipException | EOFException | IllegalArgumentException damaged) {
            throw ExchangeException.refused(
                    TEXTS.text("pack.damaged", file.getFileName(), damaged.getMessage()), damaged);
        } catch (IOException failure) {
            throw ExchangeException.failed(TEXTS.text("pack.unread", file, WholeFile.reason(failure)), failure);
        }
    }

    private static PackReader open(Path file, PackLimits limits) throws IOException, ExchangeException {
        if (!Files.isRegularFile(file)) {
            throw ExchangeException.refused(TEXTS.text("file.none", file));
        }
        String name = file.getFileName().toString();
        List<ZipDirectory.Item> items = ZipDirectory.read(file);
        requireNames(name, items, limits);
        InflationGuard guard = new InflationGuard(
                name, Files.size(file), limits.totalBytes(), limits.inflationRatio(), limits.freeBytes());
        boolean open = false;
        ZipFile zip = new ZipFile(file.toFile());
        try {
            requireSame(name, items, zip);
            PackManifest manifest = PackJson.read(name, manifestBytes(name, zip, guard));
            requireListed(name, items, manifest, limits);
            open = true;
            return new PackReader(name, zip, limits, guard, manifest);
        } finally {
            if (!open) {
                zip.close();
            }
        }
    }

    private static void requireNames(String name, List<ZipDirectory.Item> items, PackLimits limits)
            throws ExchangeException {
        if (items.size() > limits.files()) {
            throw refused("pack.many", name, items.size(), limits.files());
        }
        Map<String, String> byFolded = new HashMap<>();
        for (ZipDirectory.Item item : items) {
            String shown = shown(item.name());
            Optional<String> refusal =
                    PackPlaces.isFolder(item.name()) ? Optional.empty() : PackPlaces.refusal(item.name());
            if (refusal.isPresent()) {
                throw refused("pack.foreign", name, shown, refusal.get());
            }
            if (item.link()) {
                throw refused("pack.link", name, shown);
            }
            if (item.encrypted()) {
                throw refused("pack.encrypted", name, shown);
            }
            String before = byFolded.putIfAbsent(PackPlaces.folded(item.name()), item.name());
            if (before != null) {
                throw refused(before.equals(item.name()) ? "pack.twice" : "pack.alike", name, shown, shown(before));
            }
        }
    }

    private static String shown(String name) {
        String harmless = name.replaceAll("[\\p{Cntrl}\\p{Cs}]", "?");
        return harmless.length() > 80 ? harmless.substring(0, 80) + "\u2026" : harmless;
    }

    private static ExchangeException refused(String key, Object... arguments) {
        return ExchangeException.refused(TEXTS.text(key, arguments));
    }

    private static void requireSame(String name, List<ZipDirectory.Item> items, ZipFile zip) throws ExchangeException {
        Set<String> seen = new HashSet<>();
        zip.stream().map(ZipEntry::getName).forEach(seen::add);
        boolean same = zip.size() == items.size()
                && items.stream().map(ZipDirectory.Item::name).allMatch(seen::contains);
        if (!same) {
            throw refused("pack.ambiguous", name);
        }
    }

    private static byte[] manifestBytes(String name, ZipFile zip, InflationGuard guard)
            throws IOException, ExchangeException {
        ZipEntry entry = zip.getEntry(PackPlaces.MANIFEST);
        if (entry == null) {
            throw ExchangeException.refused(TEXTS.text("pack.noManifest", name, PackPlaces.MANIFEST));
        }
        try (InputStream in = guard.guarded(zip.getInputStream(entry))) {
            byte[] bytes = in.readNBytes(MOST_MANIFEST_BYTES + 1);
            if (bytes.length > MOST_MANIFEST_BYTES) {
                throw refused("pack.manifestLarge", name);
            }
            return bytes;
        }
    }

    private static void requireListed(
            String name, List<ZipDirectory.Item> items, PackManifest manifest, PackLimits limits)
            throws ExchangeException {
        Set<String> there = new HashSet<>();
        items.stream()
                .map(ZipDirectory.Item::name)
                .filter(item -> !PackPlaces.isFolder(item) && !item.equals(PackPlaces.MANIFEST))
                .forEach(there::add);
        Set<String> listed = new HashSet<>();
        for (PackedFile file : manifest.files()) {
            if (!listed.add(file.name()) || !there.contains(file.name())) {
                throw refused("pack.lacks", name, shown(file.name()));
            }
            if (file.bytes() > limits.fileBytes()) {
                throw refused("pack.fileLarge", name, shown(file.name()));
            }
            Optional<String> promised = PackPlaces.captureHash(file.name());
            if (promised.isPresent() && !promised.get().equals(file.sha256())) {
                throw refused("pack.otherCapture", name, shown(file.name()));
            }
        }
        there.removeAll(listed);
        if (!there.isEmpty()) {
            throw refused("pack.unlisted", name, shown(there.iterator().next()));
        }
    }

    /** Returns what the pack says about itself; it has been checked against the list of contents. */
    public PackManifest manifest() {
        return manifest;
    }

    /** Returns the captures in it. */
    public List<PackedFile> captures() {
        return manifest.files().stream()
                .filter(file -> PackPlaces.captureHash(file.name()).isPresent())
                .toList();
    }

    /** Checks every file against its size and hash, and writes those that are wanted into a folder. */
    public void read(Path folder, Predicate<PackedFile> wanted, ExchangeProgress progress)
            throws IOException, ExchangeException {
        List<PackedFile> files = manifest.files();
        for (int index = 0; index < files.size(); index++) {
            PackedFile file = files.get(index);
            progress.stopIfCancelled();
            progress.step(index, files.size(), file.name());
            if (wanted.test(file)) {
                Path target = folder.resolve(file.name());
                Files.createDirectories(target.getParent());
                try (OutputStream out = Files.newOutputStream(target, StandardOpenOption.CREATE_NEW)) {
                    copy(file, out);
                }
            } else {
                copy(file, OutputStream.nullOutputStream());
            }
        }
        progress.step(files.size(), files.size(), "");
    }

    /** Writes one file of the pack, checked against its size and hash. */
    public void copy(PackedFile file, OutputStream out) throws IOException, ExchangeException {
        MessageDigest digest = Sha256.digest();
        long bytes = 0;
        try (InputStream in = guard.guarded(zip.getInputStream(zip.getEntry(file.name())))) {
            byte[] buffer = new byte[BUFFER_BYTES];
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                bytes += read;
                if (bytes > file.bytes() || bytes > limits.fileBytes()) {
                    throw refused("pack.more", name, shown(file.name()));
                }
                digest.update(buffer, 0, read);
                out.write(buffer, 0, read);
            }
        }
        if (bytes != file.bytes() || !Sha256.hex(digest.digest()).equals(file.sha256())) {
            throw refused("pack.other", name, shown(file.name()));
        }
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }
}
