// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.List;

/**
 * The bench sheet as the template sees it.
 *
 * @param amplifier maker and model
 * @param conclusion one sentence
 * @param facts the title block
 * @param ratings the ratings, in the maker's order
 * @param charts power against supply volts, at most two
 * @param powers power at the customary voltages
 * @param settings what was set and read at the end point, highest supply voltage
 * @param confidence in percent, with its sign
 * @param rule when a rating is met, missed or undecided
 * @param remarks the laboratory's own words; may be empty
 * @param log the log's head, and whether it was checked
 * @param more what is left out and stands in the full report; empty when nothing is
 */
public record BenchView(
        String amplifier,
        String conclusion,
        List<Item> facts,
        List<BenchRating> ratings,
        List<Chart> charts,
        Table powers,
        Table settings,
        String confidence,
        String rule,
        String remarks,
        String log,
        String more) {
    /** Copies the lists. */
    public BenchView {
        facts = List.copyOf(facts);
        ratings = List.copyOf(ratings);
        charts = List.copyOf(charts);
    }

    /**
     * A rating beside what was measured.
     *
     * @param claim in the maker's words
     * @param terms mode, load, supply volts, distortion, frequency
     * @param rated rated watts
     * @param measured measured watts with expanded uncertainty, or a dash
     * @param percent difference in percent, signed
     * @param decibels the same in dB
     * @param verdict the verdict's word
     * @param mark which symbol stands beside it
     */
    public record BenchRating(
            String claim,
            String terms,
            String rated,
            String measured,
            String percent,
            String decibels,
            String verdict,
            String mark) {}
}
