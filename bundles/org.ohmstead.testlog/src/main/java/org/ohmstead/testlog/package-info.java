// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * The test log: every reading and whatever else measurements found, in the order it was taken, in one SQLite file {@code log.db}. Nothing in it is ever changed
 * or deleted; a bad reading is voided by another entry. What {@link org.ohmstead.testlog.TestLog#append} has returned survives a power
 * cut. Each entry holds the hash of the one before, so that {@link org.ohmstead.testlog.TestLog#verify} finds any change made behind
 * the log's back.
 *
 * <pre>{@code
 * try (TestLog log = TestLog.open(folder.resolve(TestLog.FILE_NAME))) {
 *     LogEntry entry = log.append(reading);
 *     log.voidEntry(entry.id(), "a lead was loose", "N. N.");
 *     for (LogEntry valid : log.readings()) {
 *         show(valid.id(), valid.reading().orElseThrow());
 *     }
 *     VerifyReport report = log.verify(Optional.of(hashOnTheSheet));
 * }
 * }</pre>
 *
 * <p>Anyone can check an entry without this software. Its hash is the SHA-256 of six texts with a line feed between them, none at the
 * end, in UTF-8: previous hash (64 zeros for the first entry), sequence number, kind, id, time, body. With the usual command line
 * tools, for the entry with sequence number 1:
 *
 * <pre>{@code
 * printf %s "$(sqlite3 log.db "SELECT previous_hash || char(10) || seq || char(10) || kind || char(10) || entry_id
 *   || char(10) || recorded_at || char(10) || body FROM entry WHERE seq = 1")" | sha256sum
 * sqlite3 log.db "SELECT hash FROM entry WHERE seq = 1"
 * }</pre>
 */
package org.ohmstead.testlog;
