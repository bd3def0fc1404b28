// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.List;

/**
 * The sheet as the template sees it: texts, tables and charts, all numbers already printed.
 *
 * @param facts the title block
 * @param conclusion one sentence
 * @param confidence in percent
 * @param ratings the ratings, in the maker's order
 * @param curveRows charts of power against supply volts, in rows
 * @param supplyWords what the supply does, in sentences
 * @param normalised power at the customary voltages
 * @param sweepCharts distortion against level
 * @param spectrumCharts harmonics at the end point
 * @param balance channels against one another
 * @param manyChannels whether some reading has more than two channels
 * @param bursts tone bursts
 * @param rule when a rating is met, missed or undecided
 * @param uncertainty where the uncertainty of the powers comes from
 * @param readings every reading
 * @param benchItems the bench
 * @param meters the meters
 * @param loads the loads
 * @param remarks the laboratory's own words; may be empty
 * @param notes about the amplifier; may be empty
 * @param integrity log, hashes and versions
 * @param problems of the project
 */
public record SheetView(
        List<Item> facts,
        String conclusion,
        String confidence,
        List<RatingRow> ratings,
        List<List<Chart>> curveRows,
        List<String> supplyWords,
        Table normalised,
        List<Chart> sweepCharts,
        List<Chart> spectrumCharts,
        Table balance,
        boolean manyChannels,
        Table bursts,
        String rule,
        UncertaintySection uncertainty,
        List<ReadingBlock> readings,
        List<Item> benchItems,
        Table meters,
        Table loads,
        String remarks,
        String notes,
        List<Item> integrity,
        Table problems) {}
