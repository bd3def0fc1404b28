// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.ohmstead.report.internal.AtomicFile;
import org.ohmstead.report.internal.Failures;
import org.ohmstead.report.internal.JsonLines;
import org.ohmstead.testlog.LogEntry;

/**
 * The log as JSON Lines: UTF-8, one JSON object in each line, one line for each entry of any kind, in the log's order.
 *
 * <p>Fields: {@code sequence}, {@code kind} (reading, note, void, figures), {@code id}, {@code recordedAt} (ISO 8601, UTC),
 * {@code previousHash}, {@code hash}, {@code voided} (true or false), {@code voidReason} and {@code voidedBy} (only when voided), and
 * {@code body}: the entry's content exactly as the log stores it, in SI units, ratios not in percent. Where the stored text is not JSON,
 * {@code body} is absent and {@code unreadableBody} holds it as a string.
 */
public final class LogJson {
    private LogJson() {}

    /**
     * Writes the lines.
     *
     * @param entries of the log, in its order
     * @param target takes the text; is not closed
     * @throws IOException when the target fails
     */
    public static void write(Iterable<LogEntry> entries, Appendable target) throws IOException {
        for (LogEntry entry : entries) {
            target.append(JsonLines.of(entry)).append('\n');
        }
    }

    /**
     * Writes the lines to a file, wholly or not at all. A file that is there already is replaced.
     *
     * @param entries of the log, in its order
     * @param target the file; its folder must exist
     * @throws ReportException when the file cannot be written
     */
    public static void write(Iterable<LogEntry> entries, Path target) throws ReportException {
        AtomicFile.write(target, Failures.say("failure.logCopy"), stream -> {
            Writer writer = new OutputStreamWriter(stream, StandardCharsets.UTF_8);
            write(entries, writer);
            writer.flush();
        });
    }
}
