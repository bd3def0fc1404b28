// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.Harmonic;
import org.ohmstead.workbench.look.Numbers;

/**
 * One row of the table of harmonics.
 *
 * @param order 1 for the fundamental
 * @param frequencyHz text of its frequency in the first channel that has it
 * @param levels one text for each channel, in dB re its fundamental; empty where there is none
 * @param percents one text for each channel, of its fundamental
 * @param phases one text for each channel, in degrees of the sine series; empty for the fundamental
 */
public record HarmonicRow(
        int order, String frequencyHz, List<String> levels, List<String> percents, List<String> phases) {
    public HarmonicRow {
        levels = List.copyOf(levels);
        percents = List.copyOf(percents);
        phases = List.copyOf(phases);
    }

    /** Returns the rows for all channels, the fundamental first; none when no channel holds a tone. */
    public static List<HarmonicRow> of(List<LoadedChannel> channels) {
        List<TreeMap<Integer, Harmonic>> byOrder = new ArrayList<>();
        TreeSet<Integer> orders = new TreeSet<>();
        double fundamentalHz = 0;
        for (LoadedChannel channel : channels) {
            TreeMap<Integer, Harmonic> harmonics = new TreeMap<>();
            if (channel.tone().isPresent()) {
                ChannelAnalysis analysis = channel.tone().get().analysis();
                fundamentalHz = fundamentalHz > 0 ? fundamentalHz : analysis.frequencyHz();
                // Only its ratio to itself counts; a harmonic proper begins at order 2.
                harmonics.put(1, new Harmonic(2, 1, 0));
                analysis.harmonics().forEach(harmonic -> harmonics.put(harmonic.order(), harmonic));
            }
            byOrder.add(harmonics);
            orders.addAll(harmonics.keySet());
        }
        List<HarmonicRow> rows = new ArrayList<>();
        for (int order : orders) {
            List<String> levels = new ArrayList<>();
            List<String> percents = new ArrayList<>();
            List<String> phases = new ArrayList<>();
            for (TreeMap<Integer, Harmonic> harmonics : byOrder) {
                Harmonic harmonic = harmonics.get(order);
                levels.add(harmonic == null ? "" : Levels.decibels(Levels.ofRatio(harmonic.ratioToFundamental())));
                percents.add(harmonic == null ? "" : percent(harmonic.ratioToFundamental()));
                phases.add(harmonic == null || order == 1 ? "" : number("%.1f", harmonic.phaseDegrees()));
            }
            rows.add(new HarmonicRow(order, number("%.2f", order * fundamentalHz), levels, percents, phases));
        }
        return rows;
    }

    private static String percent(double ratio) {
        double percent = 100 * ratio;
        return number(percent < 1e-4 ? "%.6f" : percent < 1 ? "%.5f" : "%.3f", percent);
    }

    private static String number(String format, double value) {
        return Numbers.format(format, value);
    }
}
