// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.budget;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.ohmstead.metrology.UncertaintyBudget.Correlation;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.CombinedParts;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.UncertaintyPart;

/** What is said beside a budget. */
final class BudgetNotes {
    private BudgetNotes() {}

    static String overdue(InstrumentUsed instrument) {
        String since =
                instrument.calibratedOn().map(day -> ", last on " + day + ",").orElse("");
        return "The calibration of " + instrument.name() + " (" + quantity(instrument.quantity()) + ")" + since
                + " had run out when the reading was taken; its parts hold only as far as it still keeps its specification.";
    }

    static List<String> of(ChannelReading channel, BudgetCorrelations correlations) {
        List<String> notes = new ArrayList<>();
        List<UncertaintyPart> parts = channel.uncertaintyParts();
        if (parts.isEmpty()) {
            notes.add("The reading states its standard uncertainty only as a whole.");
        } else if (parts.stream().allMatch(part -> part.input().isEmpty())) {
            notes.add("The parts of this reading say neither their shape nor their input: they are taken as normally"
                    + " distributed, and their inputs are told by their names.");
        }
        if (!ReadingBudget.agrees(channel)) {
            notes.add(String.format(
                    Locale.ROOT,
                    "The parts come to a standard uncertainty of %.4g W, but %.4g W was logged; what was logged counts in curves and"
                            + " verdicts.",
                    CombinedParts.of(channel).watts(),
                    channel.standardUncertaintyWatts()));
        }
        if (!parts.isEmpty() && parts.stream().noneMatch(part -> part.source().contains("heating"))) {
            notes.add(
                    "No part stands for the warming of the load: of its resistors no temperature coefficient and thermal"
                            + " resistance were known. It counts only as far as it is in the load's own standard uncertainty.");
        }
        for (Correlation pair : correlations.pairs()) {
            notes.add(String.format(
                    Locale.ROOT,
                    "\"%s\" and \"%s\" go together (r = %.3g).",
                    pair.first(),
                    pair.second(),
                    pair.coefficient()));
        }
        if (correlations.contradictory()) {
            notes.add("The correlations that this reading states contradict one another; they are left out here.");
        }
        if (channel.outcome() == EndPointOutcome.NOT_REACHED) {
            notes.add(
                    "The end point was not reached: the interval is about the power of the highest level, which is a lower"
                            + " bound.");
        } else if (channel.outcome() == EndPointOutcome.ALREADY_BEYOND) {
            notes.add(
                    "The first level was beyond the end point: the interval is about its power, which is an upper bound.");
        }
        return notes;
    }

    private static String quantity(MeterQuantity quantity) {
        return quantity.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
