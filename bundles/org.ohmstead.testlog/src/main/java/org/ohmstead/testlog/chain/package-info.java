// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Chains of entries, wherever they are kept. A chain is known by the hash of its first entry; each entry holds the hash of the one
 * before. Whoever has rows from another place checks them here before anything is made from them:
 *
 * <pre>{@code
 * ChainCheck check = new ChainCheck();
 * for (ChainedRow row : source.rows(chain, 0, 1000)) {
 *     check.check(row);
 * }
 * if (check.faults().isEmpty()) {
 *     LogEntry entry = EntryReader.entry("the shared log", row, "B", Map.of());
 * }
 * }</pre>
 */
package org.ohmstead.testlog.chain;
