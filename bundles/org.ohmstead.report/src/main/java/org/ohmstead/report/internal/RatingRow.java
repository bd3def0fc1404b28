// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

/**
 * A rating beside what was measured, every text ready for print.
 *
 * @param claim the rating in the maker's words, or a description when there are none
 * @param terms mode, load, supply volts, distortion, frequency
 * @param rated rated watts
 * @param measured measured watts with expanded uncertainty, or a dash
 * @param channel the weakest channel, which is judged
 * @param percent difference from the rating in percent, signed
 * @param decibels the same in dB, signed
 * @param probability that the rating is met, in percent
 * @param verdict the verdict's word
 * @param mark which symbol stands beside it: meets, short, undecided, untested
 * @param remark plain sentences; may be empty
 */
public record RatingRow(
        String claim,
        String terms,
        String rated,
        String measured,
        String channel,
        String percent,
        String decibels,
        String probability,
        String verdict,
        String mark,
        String remark) {}
