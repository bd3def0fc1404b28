// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ohmstead.model.Mode;

/**
 * Which rows are wanted.
 *
 * @param text words that must all occur, in any order, in small or capital letters; blank for any row
 * @param mode only readings in this mode
 * @param loadOhms only readings into a load that stands for this value
 * @param state only entries in these states; empty for any
 */
record LogFilter(String text, Optional<Mode> mode, Optional<Double> loadOhms, List<RowState> state) {
    static final LogFilter EVERYTHING = new LogFilter("", Optional.empty(), Optional.empty(), List.of());

    LogFilter {
        state = List.copyOf(state);
    }

    boolean wantsEverything() {
        return text.isBlank() && mode.isEmpty() && loadOhms.isEmpty() && state.isEmpty();
    }

    boolean matches(LogRow row) {
        if (!state.isEmpty() && !state.contains(row.state())) {
            return false;
        }
        if (mode.isPresent() && !mode.equals(row.mode())) {
            return false;
        }
        if (loadOhms.isPresent() && Double.compare(loadOhms.get(), row.loadOhms()) != 0) {
            return false;
        }
        for (String word : words()) {
            if (!row.searched().contains(word)) {
                return false;
            }
        }
        return true;
    }

    private String[] words() {
        String trimmed = text.strip().toLowerCase(Locale.ROOT);
        return trimmed.isEmpty() ? new String[0] : trimmed.split("\\s+");
    }
}
