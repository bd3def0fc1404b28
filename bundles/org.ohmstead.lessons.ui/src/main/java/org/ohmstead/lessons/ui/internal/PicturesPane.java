// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Layout;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.lessons.Picture;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;

/** The plots of a lesson; those that give the answer away are covered until the prediction is made. */
final class PicturesPane {
    /** Lower than this a chart has no room for the names of its axes. */
    private static final int LEAST_HEIGHT = 225;

    private static final int LEAST_WIDTH = 380;

    private final Composite area;
    private final List<ChartCanvas> charts = new ArrayList<>();
    private List<String> shown = List.of();

    PicturesPane(Composite parent) {
        area = new Composite(parent, SWT.NONE);
        area.setLayout(new Tiles());
    }

    Composite control() {
        return area;
    }

    /** Shows what the model gave last; nothing of another lesson stays. */
    void show(LessonRun run) {
        Optional<LessonResult> result = run.result();
        if (result.isEmpty()) {
            charts.forEach(chart -> chart.showMessage(""));
            shown = List.of();
            return;
        }
        List<Picture> pictures = result.get().pictures();
        makeRoom(pictures.size());
        List<String> wanted = new ArrayList<>();
        ReadOutStyle style = new ReadOutStyle(Numbers.decimalComma(), Coverage.words());
        for (int i = 0; i < pictures.size(); i++) {
            Picture picture = pictures.get(i);
            String key = run.lesson().id() + "/" + picture.id();
            wanted.add(key);
            ChartCanvas chart = charts.get(i);
            chart.setReadOutStyle(style);
            if (picture.revealing() && !run.open()) {
                chart.showMessage(Texts.say("picture.covered", picture.plot().title()));
            } else {
                boolean same = i < shown.size() && shown.get(i).equals(key);
                chart.show(PlotSource.of(picture.plot()), same);
            }
        }
        shown = wanted;
    }

    private void makeRoom(int count) {
        if (charts.size() == count) {
            return;
        }
        while (charts.size() > count) {
            charts.remove(charts.size() - 1).dispose();
        }
        while (charts.size() < count) {
            charts.add(Ids.name(new ChartCanvas(area, SWT.BORDER), "lesson.picture." + charts.size()));
        }
        area.requestLayout();
    }

    /** Charts beside each other where there is width for it, else below each other. */
    private static final class Tiles extends Layout {
        @Override
        protected Point computeSize(Composite composite, int widthHint, int heightHint, boolean flush) {
            int count = Math.max(1, composite.getChildren().length);
            int rows = widthHint == SWT.DEFAULT ? count : rows(count, widthHint);
            int width = widthHint == SWT.DEFAULT ? LEAST_WIDTH : widthHint;
            int height = rows * LEAST_HEIGHT + (rows - 1) * Spacing.GAP;
            return new Point(width, heightHint == SWT.DEFAULT ? height : heightHint);
        }

        private static int rows(int count, int width) {
            int columns = Math.max(1, Math.min(count, (width + Spacing.GAP) / (LEAST_WIDTH + Spacing.GAP)));
            return (count + columns - 1) / columns;
        }

        @Override
        protected void layout(Composite composite, boolean flush) {
            Rectangle room = composite.getClientArea();
            int count = composite.getChildren().length;
            if (count == 0) {
                return;
            }
            int rows = rows(count, room.width);
            int columns = (count + rows - 1) / rows;
            int width = (room.width - (columns - 1) * Spacing.GAP) / columns;
            int height = (room.height - (rows - 1) * Spacing.GAP) / rows;
            for (int i = 0; i < count; i++) {
                int left = room.x + i % columns * (width + Spacing.GAP);
                int top = room.y + i / columns * (height + Spacing.GAP);
                composite.getChildren()[i].setBounds(left, top, width, height);
            }
        }
    }
}
