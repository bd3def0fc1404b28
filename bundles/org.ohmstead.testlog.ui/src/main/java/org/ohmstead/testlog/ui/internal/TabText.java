// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.ohmstead.workbench.look.Numbers;

/** Rows as text for a spreadsheet: columns between tabs, a header first, numbers with a point. */
final class TabText {
    private TabText() {}

    static String of(List<LogRow> rows) {
        List<String> lines = new ArrayList<>();
        lines.add(Arrays.stream(LogColumn.values()).map(LogColumn::header).collect(Collectors.joining("\t")));
        for (LogRow row : rows) {
            List<String> cells = Numbers.withPoint(() -> LogRow.cells(row.entry(), row.state()));
            lines.add(cells.stream().map(TabText::oneLine).collect(Collectors.joining("\t")));
        }
        return String.join("\n", lines) + "\n";
    }

    /** A note may hold tabs and line breaks, which would shift the columns. */
    private static String oneLine(String cell) {
        return cell.replace('\u00a0', ' ').replaceAll("[\\t\\r\\n]+", " ");
    }
}
