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
import org.ohmstead.model.UncertaintyPart;

/** What is said beside a budget. */
final class BudgetNotes {
    private final BudgetWords words;

    BudgetNotes(BudgetWords words) {
        this.words = words;
    }

    String overdue(InstrumentUsed instrument) {
        String quantity = words.text("quantity." + instrument.quantity().name());
        return instrument
                .calibratedOn()
                .map(day -> words.text("note.overdue.since", instrument.name(), quantity, day.toString()))
                .orElseGet(() -> words.text("note.overdue", instrument.name(), quantity));
    }

    List<String> of(ChannelReading channel, BudgetCorrelations correlations) {
        List<String> notes = new ArrayList<>();
        List<UncertaintyPart> parts = channel.uncertaintyParts();
        if (parts.isEmpty()) {
            notes.add(words.text("note.whole"));
        } else if (parts.stream().allMatch(part -> part.input().isEmpty())) {
            notes.add(words.text("note.shapeless"));
        }
        if (!ReadingBudget.agrees(channel)) {
            notes.add(words.text(
                    "note.disagrees",
                    number("%.4g", CombinedParts.of(channel).watts()),
                    number("%.4g", channel.standardUncertaintyWatts())));
        }
        if (!parts.isEmpty() && parts.stream().noneMatch(part -> part.source().contains("heating"))) {
            notes.add(words.text("note.noWarming"));
        }
        for (Correlation pair : correlations.pairs()) {
            notes.add(words.text(
                    "note.together",
                    words.source(pair.first()),
                    words.source(pair.second()),
                    number("%.3g", pair.coefficient())));
        }
        if (correlations.contradictory()) {
            notes.add(words.text("note.contradictory"));
        }
        if (channel.outcome() == EndPointOutcome.NOT_REACHED) {
            notes.add(words.text("note.notReached"));
        } else if (channel.outcome() == EndPointOutcome.ALREADY_BEYOND) {
            notes.add(words.text("note.alreadyBeyond"));
        }
        return notes;
    }

    private static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }
}
