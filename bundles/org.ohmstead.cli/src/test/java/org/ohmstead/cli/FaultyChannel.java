// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.WritableByteChannel;

/** A file of a disk with faults. A write takes what finds room, and only then fails, as a real one does. */
final class FaultyChannel extends FileChannel {
    private final FileChannel real;
    private final Ills ills;
    private final boolean folder;

    FaultyChannel(FileChannel real, Ills ills, boolean folder) {
        this.real = real;
        this.ills = ills;
        this.folder = folder;
    }

    /** Writes through what has room. */
    private interface Through {
        int write(ByteBuffer some) throws IOException;
    }

    private int asMuchAsFits(ByteBuffer from, Through through) throws IOException {
        int fits = ills.roomFor(from.remaining());
        if (fits == 0 && from.hasRemaining()) {
            throw ills.full();
        }
        ByteBuffer some = from.slice(from.position(), fits);
        int count = through.write(some);
        from.position(from.position() + count);
        ills.wrote(count);
        return count;
    }

    @Override
    public int write(ByteBuffer from) throws IOException {
        return asMuchAsFits(from, real::write);
    }

    @Override
    public int write(ByteBuffer from, long position) throws IOException {
        return asMuchAsFits(from, some -> real.write(some, position));
    }

    @Override
    public long write(ByteBuffer[] from, int offset, int length) throws IOException {
        return write(from[offset]);
    }

    @Override
    public long transferFrom(ReadableByteChannel from, long position, long count) throws IOException {
        throw new IOException("not counted");
    }

    @Override
    public int read(ByteBuffer into) throws IOException {
        return real.read(into);
    }

    @Override
    public long read(ByteBuffer[] into, int offset, int length) throws IOException {
        return real.read(into, offset, length);
    }

    @Override
    public int read(ByteBuffer into, long position) throws IOException {
        return real.read(into, position);
    }

    @Override
    public long position() throws IOException {
        return real.position();
    }

    @Override
    public FileChannel position(long position) throws IOException {
        real.position(position);
        return this;
    }

    @Override
    public long size() throws IOException {
        return real.size();
    }

    @Override
    public FileChannel truncate(long size) throws IOException {
        real.truncate(size);
        return this;
    }

    @Override
    public void force(boolean metaData) throws IOException {
        ills.beforeForce(folder);
    }

    @Override
    public long transferTo(long position, long count, WritableByteChannel into) throws IOException {
        return real.transferTo(position, count, into);
    }

    @Override
    public MappedByteBuffer map(MapMode mode, long position, long size) throws IOException {
        return real.map(mode, position, size);
    }

    @Override
    public FileLock lock(long position, long size, boolean shared) throws IOException {
        return real.lock(position, size, shared);
    }

    @Override
    public FileLock tryLock(long position, long size, boolean shared) throws IOException {
        return real.tryLock(position, size, shared);
    }

    @Override
    protected void implCloseChannel() throws IOException {
        real.close();
    }
}
