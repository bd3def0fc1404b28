// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class SlicesTest {
    private final Display display = Display.getDefault();
    private final Shell shell = new Shell(display);
    private final Slices slices = new Slices(shell);
    private final List<String> done = new ArrayList<>();

    @AfterEach
    void close() {
        shell.dispose();
    }

    private void pump() {
        while (display.readAndDispatch()) {
            continue;
        }
    }

    @Test
    void nothingIsDoneAtOnceAndAllIsDoneInOrder() {
        slices.add(() -> done.add("one"));
        slices.add(() -> done.add("two"));
        assertEquals(List.of(), done);
        assertFalse(slices.done());
        pump();
        assertEquals(List.of("one", "two"), done);
        assertTrue(slices.done());
    }

    @Test
    void otherEventsComeBetweenTwoSlices() {
        slices.add(() -> done.add("one"));
        slices.add(() -> done.add("two"));
        display.asyncExec(() -> done.add("user"));
        pump();
        assertEquals(List.of("one", "user", "two"), done);
    }

    @Test
    void aSliceMayAddAnother() {
        slices.add(() -> slices.add(() -> done.add("later")));
        pump();
        assertEquals(List.of("later"), done);
    }

    @Test
    void nothingIsDoneForWhatIsGone() {
        slices.add(() -> done.add("one"));
        shell.dispose();
        slices.add(() -> done.add("two"));
        pump();
        assertEquals(List.of(), done);
    }

    @Test
    void whatWasForgottenIsNotDone() {
        slices.add(() -> done.add("one"));
        slices.clear();
        slices.add(() -> done.add("two"));
        pump();
        assertEquals(List.of("two"), done);
    }
}
