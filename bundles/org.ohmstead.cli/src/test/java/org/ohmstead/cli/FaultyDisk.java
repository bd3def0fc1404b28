// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.IOException;
import java.net.URI;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.AccessMode;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.WatchService;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileAttributeView;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.UserPrincipalLookupService;
import java.nio.file.spi.FileSystemProvider;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.StreamSupport;

/** The machine's file system, with faults in between. */
final class FaultyDisk extends FileSystem {
    private final FileSystem real;
    private final Provider provider;
    private final Ills ills;

    FaultyDisk(FileSystem real, Ills ills) {
        this.real = real;
        this.ills = ills;
        this.provider = new Provider();
    }

    Path path(Path within) {
        return new FaultyPath(this, within);
    }

    static Path real(Path path) {
        return path instanceof FaultyPath faulty ? faulty.real() : path;
    }

    @Override
    public FileSystemProvider provider() {
        return provider;
    }

    @Override
    public void close() {
        throw new UnsupportedOperationException();
    }

    @Override
    public boolean isOpen() {
        return true;
    }

    @Override
    public boolean isReadOnly() {
        return false;
    }

    @Override
    public String getSeparator() {
        return real.getSeparator();
    }

    @Override
    public Iterable<Path> getRootDirectories() {
        return () -> StreamSupport.stream(real.getRootDirectories().spliterator(), false)
                .map(this::path)
                .iterator();
    }

    @Override
    public Iterable<FileStore> getFileStores() {
        return real.getFileStores();
    }

    @Override
    public Set<String> supportedFileAttributeViews() {
        return real.supportedFileAttributeViews();
    }

    @Override
    public Path getPath(String first, String... more) {
        return path(real.getPath(first, more));
    }

    @Override
    public PathMatcher getPathMatcher(String pattern) {
        PathMatcher matcher = real.getPathMatcher(pattern);
        return path -> matcher.matches(real(path));
    }

    @Override
    public UserPrincipalLookupService getUserPrincipalLookupService() {
        return real.getUserPrincipalLookupService();
    }

    @Override
    public WatchService newWatchService() throws IOException {
        return real.newWatchService();
    }

    /** Lets everything through that the ills do not refuse. */
    private final class Provider extends FileSystemProvider {
        private final FileSystemProvider below = real.provider();

        @Override
        public String getScheme() {
            return "faulty";
        }

        @Override
        public FileSystem newFileSystem(URI uri, Map<String, ?> settings) {
            throw new UnsupportedOperationException();
        }

        @Override
        public FileSystem getFileSystem(URI uri) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Path getPath(URI uri) {
            throw new UnsupportedOperationException();
        }

        @Override
        public SeekableByteChannel newByteChannel(
                Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes) throws IOException {
            return newFileChannel(path, options, attributes);
        }

        @Override
        public FileChannel newFileChannel(Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
                throws IOException {
            boolean writes = options.contains(StandardOpenOption.WRITE) || options.contains(StandardOpenOption.APPEND);
            if (writes) {
                ills.beforeMaking(path);
            }
            boolean folder = Files.isDirectory(real(path));
            return new FaultyChannel(below.newFileChannel(real(path), options, attributes), ills, folder);
        }

        @Override
        public DirectoryStream<Path> newDirectoryStream(Path folder, DirectoryStream.Filter<? super Path> filter)
                throws IOException {
            List<Path> found = new ArrayList<>();
            try (DirectoryStream<Path> all = below.newDirectoryStream(real(folder), each -> true)) {
                for (Path each : all) {
                    Path faulty = path(each);
                    if (filter.accept(faulty)) {
                        found.add(faulty);
                    }
                }
            }
            return new DirectoryStream<>() {
                @Override
                public Iterator<Path> iterator() {
                    return found.iterator();
                }

                @Override
                public void close() {
                    found.clear();
                }
            };
        }

        @Override
        public void createDirectory(Path folder, FileAttribute<?>... attributes) throws IOException {
            if (!Files.exists(real(folder))) {
                ills.beforeMaking(folder);
            }
            below.createDirectory(real(folder), attributes);
        }

        @Override
        public void delete(Path path) throws IOException {
            below.delete(real(path));
        }

        @Override
        public void copy(Path source, Path target, CopyOption... options) throws IOException {
            throw new UnsupportedOperationException("a copy would not count its bytes");
        }

        @Override
        public void move(Path source, Path target, CopyOption... options) throws IOException {
            List<CopyOption> all = List.of(options);
            ills.beforeMove(source, target, all.contains(StandardCopyOption.ATOMIC_MOVE), Files.exists(real(target)));
            below.move(real(source), real(target), options);
        }

        @Override
        public boolean isSameFile(Path one, Path other) throws IOException {
            return below.isSameFile(real(one), real(other));
        }

        @Override
        public boolean isHidden(Path path) throws IOException {
            return below.isHidden(real(path));
        }

        @Override
        public FileStore getFileStore(Path path) throws IOException {
            return below.getFileStore(real(path));
        }

        @Override
        public void checkAccess(Path path, AccessMode... modes) throws IOException {
            below.checkAccess(real(path), modes);
        }

        @Override
        public <V extends FileAttributeView> V getFileAttributeView(Path path, Class<V> type, LinkOption... options) {
            V view = below.getFileAttributeView(real(path), type, options);
            if (type != PosixFileAttributeView.class) {
                return view;
            }
            return type.cast(java.lang.reflect.Proxy.newProxyInstance(
                    FaultyDisk.class.getClassLoader(), new Class<?>[] {type}, (proxy, method, arguments) -> {
                        if (method.getName().equals("setPermissions")) {
                            ills.beforeRights(path);
                        }
                        return method.invoke(view, arguments);
                    }));
        }

        @Override
        public <A extends BasicFileAttributes> A readAttributes(Path path, Class<A> type, LinkOption... options)
                throws IOException {
            return below.readAttributes(real(path), type, options);
        }

        @Override
        public Map<String, Object> readAttributes(Path path, String attributes, LinkOption... options)
                throws IOException {
            return below.readAttributes(real(path), attributes, options);
        }

        @Override
        public void setAttribute(Path path, String attribute, Object value, LinkOption... options) throws IOException {
            below.setAttribute(real(path), attribute, value, options);
        }
    }
}
