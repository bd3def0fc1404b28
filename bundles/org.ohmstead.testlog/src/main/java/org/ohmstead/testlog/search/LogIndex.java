// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.concurrent.locks.ReentrantLock;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.RowSource;
import org.ohmstead.testlog.internal.Witness;
import org.ohmstead.units.text.Messages;

/**
 * An index of the entries of a log, in a file of its own. It holds nothing that the log does not hold, so that it may be deleted; only
 * what it remembers of the log's end would be lost. A file that is damaged, of another version or of another log is thrown away and
 * made anew; where none can be written the index lives in memory. Several threads may use one index, and several processes one file.
 *
 * <p>The log does not feed the index: {@link #refresh} makes it catch up. Searches show the log as it was then.
 */
public final class LogIndex implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(LogIndex.class);
    private static final int ATTEMPTS = 3;

    private final Object lock = new Object();
    private final ReentrantLock refreshing = new ReentrantLock();
    private final Optional<Path> path;
    private final RowSource source;
    private IndexFile file;
    private IndexColumns columns;
    private boolean kept;
    private String remark = "";
    private Exception suspicion;

    private LogIndex(Optional<Path> path, RowSource source) {
        this.path = path;
        this.source = source;
    }

    /** Returns where the index of a log lies: beside it. */
    public static Path beside(Path logFile) {
        return Witness.indexBeside(logFile);
    }

    /**
     * Opens the index in a file; makes an empty one when there is none or it is no use.
     *
     * @param indexFile the file; see {@link #beside}
     * @param source what it is an index of
     * @throws TestLogException when not even an index in memory can be made
     */
    public static LogIndex open(Path indexFile, RowSource source) throws TestLogException {
        LogIndex index = new LogIndex(Optional.of(indexFile), source);
        index.openFile();
        return index;
    }

    /** Opens an empty index in memory. */
    public static LogIndex inMemory(RowSource source) throws TestLogException {
        LogIndex index = new LogIndex(Optional.empty(), source);
        index.openFile();
        return index;
    }

    private void openFile() throws TestLogException {
        if (path.isPresent()) {
            try {
                file = IndexFile.open(path);
                kept = true;
                return;
            } catch (SQLException | BlockCode.DamagedException noUse) {
                remark = TEXTS.text("index.noUse", noUse.getMessage());
            }
            if (remakeFile(path.get())) {
                return;
            }
        }
        openMemory();
    }

    /** What the old file remembered of the log's end is taken over when it can still be read. */
    private boolean remakeFile(Path noUse) {
        Optional<Witness> witness = Witness.in(noUse);
        try {
            IndexFile.delete(noUse);
            file = IndexFile.open(path);
            if (witness.isPresent()) {
                file.begin();
                file.setWitness(witness.get());
                file.commit();
            }
            kept = true;
        } catch (SQLException | IOException | BlockCode.DamagedException cannot) {
            remark = TEXTS.text("index.memory", noUse.toString(), cannot.getMessage());
            kept = false;
        }
        return kept;
    }

    private void openMemory() throws TestLogException {
        try {
            kept = false;
            file = IndexFile.open(Optional.empty());
        } catch (SQLException | BlockCode.DamagedException impossible) {
            throw new TestLogException(TEXTS.text("index.impossible", impossible.getMessage()), impossible);
        }
    }

    /** Throws a file away that turned out to be damaged, unless another thread has done so. */
    private void renew(IndexFile damaged, Exception why) throws TestLogException {
        synchronized (lock) {
            if (file != damaged) {
                return;
            }
            closeFile();
            columns = null;
            suspicion = null;
            boolean remade = path.isPresent() && kept && remakeFile(path.get());
            if (remade) {
                remark = TEXTS.text("index.damaged", why.getMessage());
            } else {
                openMemory();
            }
        }
    }

    private void closeFile() {
        try {
            file.close();
        } catch (SQLException damagedToo) {
            remark = damagedToo.getMessage();
        }
    }

    private IndexFile file() {
        synchronized (lock) {
            return file;
        }
    }

    /** Returns the columns as they are in the file now; the caller holds the lock. */
    private IndexColumns columns() throws SQLException, BlockCode.DamagedException {
        IndexFile.Content content = file.content();
        if (columns == null || columns.content().making() != content.making()) {
            columns = new IndexColumns(file, content);
        } else if (!columns.content().equals(content)) {
            columns = columns.next(content);
        }
        return columns;
    }

    /** Does something with the index; when it turns out to be damaged, once more with one that was made anew. */
    private <T> T with(IndexWork<T> work) throws TestLogException {
        for (int attempt = 1; ; attempt++) {
            IndexFile used = file();
            try {
                synchronized (lock) {
                    if (suspicion == null) {
                        return work.run(columns());
                    }
                }
                throw new BlockCode.DamagedException("a page of it was damaged", suspicion);
            } catch (SQLException | BlockCode.DamagedException damage) {
                if (attempt == ATTEMPTS) {
                    throw unusable(damage);
                }
                renew(used, damage);
                refresh(IndexProgress.NONE);
            }
        }
    }

    private static TestLogException unusable(Exception damage) {
        return new TestLogException(TEXTS.text("index.unusable", damage.getMessage(), Witness.INDEX_NAME), damage);
    }

    /** Something done with the columns. */
    @FunctionalInterface
    private interface IndexWork<T> {
        T run(IndexColumns columns) throws SQLException, BlockCode.DamagedException;
    }

    /** Returns how the index stands against the log as it is now. */
    public IndexState state() throws TestLogException {
        long total = source.chains().stream().mapToLong(ChainInfo::entries).sum();
        long indexed = with(IndexColumns::rows);
        synchronized (lock) {
            return new IndexState(indexed, total, kept, remark);
        }
    }

    /**
     * Takes in what was added to the log since. May be called on any thread; searches go on meanwhile and find what was taken in.
     *
     * @param progress is told how far it is, and may stop it
     * @return how many entries were taken in
     * @throws TestLogException when the log cannot be read
     */
    public long refresh(IndexProgress progress) throws TestLogException {
        refreshing.lock();
        try {
            for (int attempt = 1; ; attempt++) {
                IndexFile used = file();
                try {
                    return new IndexRefresh(lock, used, source, progress).run();
                } catch (SQLException | BlockCode.DamagedException damage) {
                    if (attempt == ATTEMPTS) {
                        throw unusable(damage);
                    }
                    renew(used, damage);
                }
            }
        } finally {
            refreshing.unlock();
        }
    }

    /** Returns the entries that meet a query, in an order. */
    public Found find(Find find, FindOrder order) throws TestLogException {
        return with(now ->
                IndexOrder.ordered(new FoundRows.Owner(lock, this::suspect), now, IndexFilter.rows(now, find), order));
    }

    /** What was found turned out to be damaged: the next search makes the index anew first. The caller holds the lock. */
    private void suspect(IndexColumns damaged, Exception why) {
        if (columns != null && columns.content().making() == damaged.content().making()) {
            suspicion = why;
        }
    }

    /**
     * Returns the different texts of a column, in their order, such as the amplifiers that there are.
     *
     * @param column one that holds texts, such as {@link IndexColumn#AMPLIFIER}
     */
    public List<String> distinct(IndexColumn column) throws TestLogException {
        IndexField field = column.field();
        if (!field.ofWords() || field == IndexField.TEXT) {
            throw new IllegalArgumentException("column is " + column + "; it must be one that holds names");
        }
        return with(now -> {
            TreeSet<String> all = new TreeSet<>(String.CASE_INSENSITIVE_ORDER.thenComparing(text -> text));
            for (Words words : now.words(field)) {
                for (int place = 0; place < words.size(); place++) {
                    all.add(words.text(place));
                }
            }
            return new ArrayList<>(all);
        });
    }

    /** Closes the index; what it found can no longer be paged through. */
    @Override
    public void close() {
        synchronized (lock) {
            closeFile();
        }
    }
}
