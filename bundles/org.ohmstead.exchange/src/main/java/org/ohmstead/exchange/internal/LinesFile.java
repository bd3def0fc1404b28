// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.internal.LineJson.ChainRow;
import org.ohmstead.exchange.internal.LineJson.NotALine;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.RowSource;
import org.ohmstead.units.text.Messages;

/** The rows of a log in a file of lines. Only places of some of the lines are kept in memory. */
public final class LinesFile implements RowSource, AutoCloseable {
    private static final Messages TEXTS = Messages.of(LinesFile.class);
    private static final int STRIDE = 256;

    private final String name;
    private final FileChannel channel;
    private final List<ChainInfo> chains;
    private final Map<String, Places> places = new LinkedHashMap<>();

    /** Where lines of a chain begin: every so many of them. */
    private static final class Places {
        private final ChainInfo chain;
        private final List<Long> begins = new ArrayList<>();
        private long rows;
        private String headHash = ChainedRow.FIRST_PREVIOUS_HASH;

        Places(ChainInfo chain) {
            this.chain = chain;
        }
    }

    private LinesFile(String name, FileChannel channel, List<ChainInfo> chains) {
        this.name = name;
        this.channel = channel;
        this.chains = chains;
        chains.forEach(chain -> places.put(chain.chain(), new Places(chain)));
    }

    /** Opens a file and looks it through once: every line an entry, each chain complete as its head says, one after the other. */
    public static LinesFile open(Path file) throws ExchangeException {
        String name = String.valueOf(file.getFileName());
        if (!Files.isRegularFile(file)) {
            throw ExchangeException.refused(TEXTS.text("file.none", file));
        }
        try {
            FileChannel channel = FileChannel.open(file);
            boolean open = false;
            try {
                LinesFile lines = look(name, channel);
                open = true;
                return lines;
            } finally {
                if (!open) {
                    channel.close();
                }
            }
        } catch (IOException failure) {
            throw ExchangeException.failed(TEXTS.text("file.unread", file, WholeFile.reason(failure)), failure);
        }
    }

    private static LinesFile look(String name, FileChannel channel) throws IOException, ExchangeException {
        // Not closed: it would close the channel.
        LineBytes lines = new LineBytes(Channels.newInputStream(channel.position(0)), LineJson.LONGEST_LINE);
        long number = 1;
        try {
            byte[] head = lines.next().orElseThrow(() -> new NotALine(TEXTS.text("line.none")));
            LinesFile file = new LinesFile(name, channel, LineJson.chains(head));
            Places before = null;
            for (Optional<byte[]> line = lines.next(); line.isPresent(); line = lines.next()) {
                number++;
                before = file.take(LineJson.row(line.get()), lines.begin(), before);
            }
            file.requireComplete();
            return file;
        } catch (NotALine | JsonProcessingException wrong) {
            String detail = wrong instanceof JsonProcessingException json
                    ? TEXTS.text("line.noJson", json.getOriginalMessage())
                    : wrong.getMessage();
            throw ExchangeException.refused(TEXTS.text("line.unread", number, name, detail), wrong);
        } catch (IllegalArgumentException wrong) {
            throw ExchangeException.refused(TEXTS.text("line.wrong", number, name, wrong.getMessage()), wrong);
        }
    }

    private Places take(ChainRow line, long begin, Places before) throws NotALine {
        Places of = places.get(line.chain());
        if (of == null) {
            throw new NotALine(TEXTS.text("line.otherChain"));
        }
        if (of != before && of.rows > 0) {
            throw new NotALine(TEXTS.text("line.goesBack"));
        }
        if (line.row().sequence() != of.chain.firstSequence() + of.rows) {
            throw new NotALine(TEXTS.text("line.number", line.row().sequence(), of.chain.firstSequence() + of.rows));
        }
        if (of.rows % STRIDE == 0) {
            of.begins.add(begin);
        }
        of.rows++;
        of.headHash = line.row().hash();
        return of;
    }

    private void requireComplete() throws ExchangeException {
        for (Places of : places.values()) {
            if (of.rows != of.chain.entries() || !of.headHash.equals(of.chain.headHash())) {
                throw ExchangeException.refused(TEXTS.text(
                        of.chain.label().isEmpty() ? "lines.incompleteOwn" : "lines.incomplete",
                        name,
                        of.rows,
                        of.chain.entries(),
                        of.chain.label()));
            }
        }
    }

    @Override
    public List<ChainInfo> chains() {
        return chains;
    }

    @Override
    public List<ChainedRow> rows(String chain, long after, int most) throws TestLogException {
        Places of = places.get(chain);
        long first = of == null ? 0 : Math.max(0, after + 1 - of.chain.firstSequence());
        if (of == null || first >= of.rows) {
            return List.of();
        }
        try {
            int stride = Math.toIntExact(first / STRIDE);
            channel.position(of.begins.get(stride));
            LineBytes lines = new LineBytes(Channels.newInputStream(channel), LineJson.LONGEST_LINE);
            List<ChainedRow> rows = new ArrayList<>();
            long end = Math.min(of.rows, first + most);
            for (long index = (long) stride * STRIDE; index < end; index++) {
                byte[] line = lines.next().orElseThrow(() -> new NotALine(TEXTS.text("line.gone")));
                if (index >= first) {
                    rows.add(LineJson.row(line).row());
                }
            }
            return rows;
        } catch (IOException | ExchangeException failure) {
            throw new TestLogException(TEXTS.text("lines.changed", name), failure);
        }
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
