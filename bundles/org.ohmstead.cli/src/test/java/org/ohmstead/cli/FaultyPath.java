// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.nio.file.FileSystem;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.WatchEvent;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;

/**
 * A path of a disk with faults.
 *
 * @param disk the disk
 * @param real the path of the machine behind it
 */
record FaultyPath(FaultyDisk disk, Path real) implements Path {
    private Path with(Path path) {
        return path == null ? null : new FaultyPath(disk, path);
    }

    @Override
    public FileSystem getFileSystem() {
        return disk;
    }

    @Override
    public boolean isAbsolute() {
        return real.isAbsolute();
    }

    @Override
    public Path getRoot() {
        return with(real.getRoot());
    }

    @Override
    public Path getFileName() {
        return with(real.getFileName());
    }

    @Override
    public Path getParent() {
        return with(real.getParent());
    }

    @Override
    public int getNameCount() {
        return real.getNameCount();
    }

    @Override
    public Path getName(int index) {
        return with(real.getName(index));
    }

    @Override
    public Path subpath(int from, int to) {
        return with(real.subpath(from, to));
    }

    @Override
    public boolean startsWith(Path other) {
        return real.startsWith(FaultyDisk.real(other));
    }

    @Override
    public boolean endsWith(Path other) {
        return real.endsWith(FaultyDisk.real(other));
    }

    @Override
    public Path normalize() {
        return with(real.normalize());
    }

    @Override
    public Path resolve(Path other) {
        return with(real.resolve(FaultyDisk.real(other)));
    }

    @Override
    public Path relativize(Path other) {
        return with(real.relativize(FaultyDisk.real(other)));
    }

    @Override
    public URI toUri() {
        return real.toUri();
    }

    /** The database opens its files by itself, past the faults. */
    @Override
    public File toFile() {
        return real.toFile();
    }

    @Override
    public Path toAbsolutePath() {
        return with(real.toAbsolutePath());
    }

    @Override
    public Path toRealPath(LinkOption... options) throws IOException {
        return with(real.toRealPath(options));
    }

    @Override
    public WatchKey register(WatchService watcher, WatchEvent.Kind<?>[] events, WatchEvent.Modifier... modifiers)
            throws IOException {
        return real.register(watcher, events, modifiers);
    }

    @Override
    public int compareTo(Path other) {
        return real.compareTo(FaultyDisk.real(other));
    }

    @Override
    public String toString() {
        return real.toString();
    }
}
