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

/** A packed project, read without trusting it. */
public final class PackReader implements AutoCloseable {
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
                    "The file " + file.getFileName() + " is damaged (" + damaged.getMessage()
                            + "). Take it from where it was packed once more.",
                    damaged);
        } catch (IOException failure) {
            throw ExchangeException.failed(
                    "The packed project " + file + " could not be read, or what is in it not be written ("
                            + WholeFile.reason(failure) + "). Check the disks and the room on them.",
                    failure);
        }
    }

    private static PackReader open(Path file, PackLimits limits) throws IOException, ExchangeException {
        if (!Files.isRegularFile(file)) {
            throw ExchangeException.refused("There is no file " + file + ". Check the name.");
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
            throw refused(
                    name, "holds " + items.size() + " files, more than the " + limits.files() + " of any project");
        }
        Map<String, String> byFolded = new HashMap<>();
        for (ZipDirectory.Item item : items) {
            String shown = "\"" + shown(item.name()) + "\"";
            Optional<String> refusal =
                    PackPlaces.isFolder(item.name()) ? Optional.empty() : PackPlaces.refusal(item.name());
            if (refusal.isPresent()) {
                throw refused(name, "holds a file named " + shown + ", which " + refusal.get());
            }
            if (item.link()) {
                throw refused(name, "holds " + shown + " as a link to somewhere else");
            }
            if (item.encrypted()) {
                throw refused(name, "holds " + shown + " encrypted");
            }
            String before = byFolded.putIfAbsent(PackPlaces.folded(item.name()), item.name());
            if (before != null) {
                throw refused(
                        name,
                        before.equals(item.name())
                                ? "holds " + shown + " twice"
                                : "holds " + shown + " and \"" + shown(before)
                                        + "\", which some disks cannot tell apart");
            }
        }
    }

    private static String shown(String name) {
        String harmless = name.replaceAll("[\\p{Cntrl}\\p{Cs}]", "?");
        return harmless.length() > 80 ? harmless.substring(0, 80) + "\u2026" : harmless;
    }

    private static ExchangeException refused(String name, String predicate) {
        return ExchangeException.refused(
                "The file " + name + " " + predicate + ". Nothing was taken from it. Check where it comes from.");
    }

    private static void requireSame(String name, List<ZipDirectory.Item> items, ZipFile zip) throws ExchangeException {
        Set<String> seen = new HashSet<>();
        zip.stream().map(ZipEntry::getName).forEach(seen::add);
        boolean same = zip.size() == items.size()
                && items.stream().map(ZipDirectory.Item::name).allMatch(seen::contains);
        if (!same) {
            throw refused(name, "shows other contents to different readers");
        }
    }

    private static byte[] manifestBytes(String name, ZipFile zip, InflationGuard guard)
            throws IOException, ExchangeException {
        ZipEntry entry = zip.getEntry(PackPlaces.MANIFEST);
        if (entry == null) {
            throw ExchangeException.refused("The file " + name + " is no packed project: it holds no "
                    + PackPlaces.MANIFEST + ". Check that it is the right file.");
        }
        try (InputStream in = guard.guarded(zip.getInputStream(entry))) {
            byte[] bytes = in.readNBytes(MOST_MANIFEST_BYTES + 1);
            if (bytes.length > MOST_MANIFEST_BYTES) {
                throw refused(name, "has a manifest larger than that of any project");
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
                throw refused(name, "lacks \"" + shown(file.name()) + "\", or names it twice in its manifest");
            }
            if (file.bytes() > limits.fileBytes()) {
                throw refused(name, "holds \"" + shown(file.name()) + "\" with more bytes than any file of a project");
            }
            Optional<String> promised = PackPlaces.captureHash(file.name());
            if (promised.isPresent() && !promised.get().equals(file.sha256())) {
                throw refused(
                        name,
                        "holds the capture \"" + shown(file.name()) + "\" with another content than its name says");
            }
        }
        there.removeAll(listed);
        if (!there.isEmpty()) {
            throw refused(name, "holds \"" + shown(there.iterator().next()) + "\", which its manifest does not name");
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
                    throw refused(name, "holds more in \"" + shown(file.name()) + "\" than its manifest says");
                }
                digest.update(buffer, 0, read);
                out.write(buffer, 0, read);
            }
        }
        if (bytes != file.bytes() || !Sha256.hex(digest.digest()).equals(file.sha256())) {
            throw refused(name, "holds another content in \"" + shown(file.name()) + "\" than its manifest says");
        }
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }
}
