// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.table.CopiedTable;

/** Rows as text for a spreadsheet: columns between tabs, a header first, numbers with a point. */
final class TabText {
    private TabText() {}

    static String of(List<LogRow> rows) {
        List<List<String>> lines = new ArrayList<>();
        lines.add(Arrays.stream(LogColumn.values()).map(LogColumn::header).toList());
        for (LogRow row : rows) {
            lines.add(Numbers.withPoint(row::cellsAnew));
        }
        return CopiedTable.text(lines);
    }
}
