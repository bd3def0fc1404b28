// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;

class EditTableSizeTest {
    private static final int ROWS = 2000;
    /** What a person takes for at once, with ample room for a machine that is busy with other things; left idle it takes about a tenth. */
    /** That it is quick is for a benchmark to say; this shows that only rows in sight are made, which is why. */
    @Test
    void ofTwoThousandRowsOnlyThoseInSightAreMade() {
        try (TableStage stage = new TableStage()) {
            int[] asked = new int[1];
            List<Claim> rows = new ArrayList<>();
            for (int index = 0; index < ROWS; index++) {
                rows.add(Claim.of("Rating " + index, 1 + index % 16, 10 + index));
            }
            stage.table.table().addListener(SWT.SetData, event -> asked[0]++);
            stage.table.setRows(rows);
            stage.pump();
            assertTrue(asked[0] < ROWS / 4, asked[0] + " rows were made");
            stage.table.select(ROWS - 1, "load");
            stage.waitFor(() -> stage.table.table().getSelectionIndex() == ROWS - 1);
            stage.press(SWT.F2);
            stage.type("5");
            stage.enter();
            assertEquals(5, stage.table.rows().get(ROWS - 1).loadOhms());
            assertEquals(ROWS - 1, stage.table.table().getSelectionIndex(), "the selection stays");
            stage.find("filter", Text.class).setText("no such rating");
            stage.pump();
            assertEquals(0, stage.table.table().getItemCount());
            stage.find("filter", Text.class).setText("");
            stage.table.sortBy(2);
            stage.pump();
            assertEquals(ROWS, stage.table.table().getItemCount());
        }
    }
}
