// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Finding entries among a million: an index beside the log, made from it, that can be deleted at any time. It knows each entry's
 * conditions and figures as columns, so that any filter and any order takes a fraction of a second.
 *
 * <pre>{@code
 * try (LogIndex index = LogIndex.open(LogIndex.beside(log.file()), log.rows())) {
 *     index.refresh(IndexProgress.NONE);
 *     Found found = index.find(Find.parse("amplifier:Larkspur power:80..120"), FindOrder.NEWEST_FIRST);
 *     show(found.size(), found.page(0, 100));
 * }
 * }</pre>
 */
package org.ohmstead.testlog.search;
