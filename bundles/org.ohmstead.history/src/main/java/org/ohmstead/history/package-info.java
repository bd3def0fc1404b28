// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * A lab's memory: the logs of several projects searched as one, amplifiers or periods compared at a common supply voltage and load, what a
 * watt costs in the money of one period, and how a figure went over time.
 *
 * <pre>{@code
 * try (History history = History.open(List.of(HistorySource.of("kestrel", kestrelLog, kestrel), HistorySource.of("heron", heronLog, heron)))) {
 *     history.refresh(IndexProgress.NONE);
 *     HistoryFound found = history.find(Find.parse("load:4 power:80..120"), FindOrder.NEWEST_FIRST);
 *     Comparison comparison = Comparison.of(history.subjects(Find.EVERYTHING, List.of()), ComparisonRequest.at(14.4, 4, Mode.STEREO));
 *     comparison.differences().forEach(difference -> say(difference.sentence()));
 * }
 * }</pre>
 */
package org.ohmstead.history;
