// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.eclipse.swt.graphics.DeviceData;
import org.eclipse.swt.graphics.Resource;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;

/**
 * Counts what of the toolkit's resources (images, fonts, drawing contexts, cursors, regions ...) was made since and is still there, and
 * keeps note of those that nobody disposed of before the collector took them: their memory outside the heap is never given back.
 */
final class SwtLeaks implements AutoCloseable {
    private final Display display;
    private final List<Error> lost = Collections.synchronizedList(new ArrayList<>());

    SwtLeaks(Display display) {
        this.display = display;
        display.setTracking(true);
        Resource.setNonDisposeHandler(lost::add);
    }

    /** Returns how many there are of each kind. */
    Map<String, Integer> alive() {
        return counted(false);
    }

    /** Returns how many there are of each kind from each place where they were made: the topmost of ours, if code of ours was at work. */
    Map<String, Integer> places() {
        return counted(true);
    }

    private Map<String, Integer> counted(boolean byPlace) {
        DeviceData data = display.getDeviceData();
        Map<String, Integer> counts = new TreeMap<>();
        for (int index = 0; index < data.objects.length; index++) {
            if (data.objects[index] != null && !ofTheSystem(data.errors[index])) {
                String kind = data.objects[index].getClass().getSimpleName();
                counts.merge(
                        byPlace ? kind + " of " + place(data.errors[index]).orElse("the platform") : kind,
                        1,
                        Integer::sum);
            }
        }
        return counts;
    }

    /** Cursors and icons that the display shares with everybody; it makes new ones after each change of the theme, never to be disposed. */
    private static boolean ofTheSystem(Error made) {
        return Arrays.stream(made.getStackTrace())
                .anyMatch(frame -> frame.getClassName().equals(Display.class.getName())
                        && frame.getMethodName().startsWith("getSystem"));
    }

    /** Returns how many controls all windows have, also hidden ones. */
    int controls() {
        return Arrays.stream(display.getShells()).mapToInt(SwtLeaks::controls).sum();
    }

    private static int controls(Control control) {
        return 1
                + (control instanceof Composite parent
                        ? Arrays.stream(parent.getChildren())
                                .mapToInt(SwtLeaks::controls)
                                .sum()
                        : 0);
    }

    /** Returns where those of ours were made that were never disposed of. */
    List<String> lost() {
        synchronized (lost) {
            return lost.stream().flatMap(made -> place(made).stream()).toList();
        }
    }

    private static Optional<String> place(Error made) {
        return Arrays.stream(made.getStackTrace())
                .map(StackTraceElement::toString)
                .filter(StallWatch::ours)
                .findFirst();
    }

    @Override
    public void close() {
        Resource.setNonDisposeHandler(null);
        display.setTracking(false);
    }
}
