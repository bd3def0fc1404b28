// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.exchange.internal.LineWriter;
import org.ohmstead.exchange.internal.LinesFile;
import org.ohmstead.exchange.internal.TableReading;
import org.ohmstead.exchange.internal.UnpackFolder;
import org.ohmstead.exchange.internal.WholeFile;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.JoinReport;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.LogRebuild;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/**
 * A whole log as JSON Lines: UTF-8, LF at the end of each line, one JSON object in each. The first line names the format and the chains
 * with their number of entries and heads; each of the others is an entry exactly as it is stored, chain by chain, the log's own first:
 * {@code chain} (hash of the chain's first entry), {@code sequence}, {@code kind}, {@code id}, {@code recordedAt}, {@code
 * previousHash}, {@code hash} and {@code body}, the stored text as a string. So the chain can be carried anywhere and verified there:
 * {@code hash} is the SHA-256 of previous hash, sequence, kind, id, time and body in UTF-8, with a line feed between them.
 */
public final class LogLines {
    private static final Messages TEXTS = Messages.of(LogLines.class);

    private LogLines() {}

    /**
     * What the first line says beside the chains.
     *
     * @param title title of the project
     * @param softwareVersion version of the software that writes it
     * @param writtenAt when
     */
    public record Head(String title, String softwareVersion, Instant writtenAt) {}

    /**
     * Writes the lines to a file, wholly or not at all. A file that is there already is replaced.
     *
     * @param log the log; entries that are added meanwhile do not come
     * @param head what the first line says
     * @param target the file; its folder must exist
     * @throws ExchangeException when the file cannot be written or the log not be read
     */
    public static void write(TestLog log, Head head, Path target) throws ExchangeException {
        WholeFile.write(target, TEXTS.text("lines.written"), stream -> write(log, head, stream));
    }

    /**
     * Writes the lines.
     *
     * @param log the log; entries that are added meanwhile do not come
     * @param head what the first line says
     * @param target takes them; is flushed and not closed
     * @throws IOException when the target fails
     * @throws ExchangeException when the log cannot be read
     */
    public static void write(TestLog log, Head head, OutputStream target) throws IOException, ExchangeException {
        try {
            OutputStream buffered = new BufferedOutputStream(target, 1 << 16);
            LineWriter.write(log.rows(), head, buffered);
            buffered.flush();
        } catch (TestLogException failure) {
            throw ExchangeException.ofLog(TEXTS.text("lines.unwritten", failure.getMessage()), failure);
        }
    }

    /** Something done with a log that stood in lines. */
    @FunctionalInterface
    private interface Work<T> {
        T run(TestLog log) throws TestLogException, ExchangeException;
    }

    private static <T> T with(Path file, Work<T> work) throws ExchangeException {
        try (UnpackFolder folder = UnpackFolder.temporary();
                LinesFile lines = LinesFile.open(file)) {
            // Under this name the log is spoken of in messages.
            Path rebuilt = folder.path().resolve(file.getFileName() + ".db");
            LogRebuild.write(lines, rebuilt);
            try (TestLog log = TestLog.openReadOnly(rebuilt)) {
                return work.run(log);
            }
        } catch (TestLogException failure) {
            throw ExchangeException.ofLog(TEXTS.text("lines.nothingTaken", file, failure.getMessage()), failure);
        } catch (IOException failure) {
            throw ExchangeException.failed(
                    TEXTS.text("lines.unreadOrNoRoom", file, WholeFile.reason(failure)), failure);
        }
    }

    /**
     * Joins the log in a file to another one, as its own chain, after having verified every entry. What is there already does not come
     * twice.
     *
     * @param file the lines
     * @param into the log that takes them
     * @param name what the other bench is called, not blank
     * @param who joins it; may be empty
     * @throws ExchangeException when the lines are not those of a whole log; then nothing was joined
     */
    public static JoinReport join(Path file, TestLog into, String name, String who) throws ExchangeException {
        JoinReport report = with(file, log -> into.join(log, name, who));
        // The log's own sentence would name the temporary file.
        return report.entry().isPresent()
                ? report
                : new JoinReport(0, report.entry(), TEXTS.text("lines.nothingJoined", file.getFileName()));
    }

    /**
     * Makes the file of a log from lines.
     *
     * @param file the lines
     * @param newLog the file to be made; there must be none yet
     * @throws ExchangeException when the lines are not those of a whole log; then there is none
     */
    public static void rebuild(Path file, Path newLog) throws ExchangeException {
        try (LinesFile lines = LinesFile.open(file)) {
            LogRebuild.write(lines, newLog);
        } catch (TestLogException failure) {
            throw ExchangeException.ofLog(TEXTS.text("lines.nothingMade", file, failure.getMessage()), failure);
        } catch (IOException failure) {
            throw ExchangeException.failed(TEXTS.text("lines.unread", file, WholeFile.reason(failure)), failure);
        }
    }

    /**
     * Returns the readings that count of the log in a file, to be added to another log as readings of its own: with all their levels,
     * instruments and captures, but as imported, with a note that says from where.
     *
     * @param file the lines
     * @param settings revision and version to be kept with them; the rest does not matter here
     * @throws ExchangeException when the lines are not those of a whole log
     */
    public static ReadingImport readings(Path file, ImportSettings settings) throws ExchangeException {
        return with(file, log -> {
            String sha256 = CaptureStore.sha256(file);
            List<TableReading.Found> found = new ArrayList<>();
            log.forEach(LogQuery.validReadings(), entry -> entry.reading()
                    .ifPresent(reading -> found.add(new TableReading.Found(
                            imported(reading, entry, String.valueOf(file.getFileName()), sha256, settings),
                            entry.hash()))));
            return ReadingImport.of(String.valueOf(file.getFileName()), sha256, found);
        });
    }

    private static Reading imported(
            Reading reading, LogEntry entry, String fileName, String sha256, ImportSettings settings) {
        Provenance from = reading.provenance();
        List<String> notes = new ArrayList<>();
        notes.add("Imported from \"" + fileName + "\" (SHA-256 " + sha256 + ").");
        notes.add("There it is entry \"" + entry.id() + "\" with the hash " + entry.hash() + ", found by "
                + from.procedureId() + " " + from.procedureVersion() + ".");
        notes.addAll(reading.notes());
        return reading.withProvenance(new Provenance(
                        settings.projectRevision(),
                        TableReading.PROCEDURE,
                        TableReading.PROCEDURE_VERSION,
                        settings.softwareVersion(),
                        from.operator(),
                        from.instruments(),
                        from.captures(),
                        from.specimen()))
                .withNotes(notes);
    }
}
