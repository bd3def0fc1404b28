// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.util.function.Supplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleControlAdapter;
import org.eclipse.swt.accessibility.AccessibleControlEvent;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageDataProvider;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.ohmstead.plot.chart.ChartLook;
import org.ohmstead.units.text.Messages;

/** A name with its sample of line and marker; a click or the space bar hides its series and shows it again. */
final class LegendToggle extends Canvas {
    private static final int SAMPLE_WIDTH = 24;
    private static final int SAMPLE_HEIGHT = 14;
    private static final int PADDING_X = 6;
    private static final int PADDING_Y = 4;
    private static final int GAP = 6;
    private static final int OFF_ALPHA = 90;
    private static final Messages TEXTS = Messages.of(LegendToggle.class);

    private final ChartModel model;
    private final LegendKey key;
    private final Supplier<ChartLook> looks;
    private ChartLook look;
    private Image sample;
    private boolean hovered;

    LegendToggle(Composite parent, ChartModel model, LegendKey key, Supplier<ChartLook> looks) {
        super(parent, SWT.DOUBLE_BUFFERED);
        this.model = model;
        this.key = key;
        this.looks = looks;
        look = looks.get();
        setData("ohmstead.id", "chart.legend." + key.name());
        setToolTipText(TEXTS.text("legend.toggle", key.name().replace("&", "&&")));
        addListener(SWT.Paint, event -> paint(event.gc));
        addListener(SWT.MouseUp, this::release);
        addListener(SWT.KeyDown, this::press);
        addListener(SWT.Traverse, LegendToggle::traverse);
        addListener(SWT.MouseEnter, event -> setHovered(true));
        addListener(SWT.MouseExit, event -> setHovered(false));
        addListener(SWT.FocusIn, event -> redraw());
        addListener(SWT.FocusOut, event -> redraw());
        addListener(SWT.Dispose, event -> disposeSample());
        describe();
    }

    private boolean on() {
        return !model.hidden().contains(key.name());
    }

    private void toggle() {
        model.setVisible(key.name(), !on());
        redraw();
        getAccessible().sendEvent(ACC.EVENT_STATE_CHANGED, null);
    }

    private void setHovered(boolean now) {
        hovered = now;
        redraw();
    }

    private void release(Event event) {
        if (event.button == 1 && getClientArea().contains(event.x, event.y)) {
            toggle();
        }
    }

    private void press(Event event) {
        if (event.character == ' ' || event.character == SWT.CR) {
            toggle();
        }
    }

    private static void traverse(Event event) {
        event.doit = event.detail != SWT.TRAVERSE_RETURN;
    }

    private void describe() {
        getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = key.name();
            }
        });
        getAccessible().addAccessibleControlListener(new AccessibleControlAdapter() {
            @Override
            public void getRole(AccessibleControlEvent event) {
                event.detail = ACC.ROLE_CHECKBUTTON;
            }

            @Override
            public void getState(AccessibleControlEvent event) {
                event.detail = ACC.STATE_FOCUSABLE | (on() ? ACC.STATE_CHECKED : 0);
            }
        });
    }

    /** The theme may have changed since the last time. */
    private void takeLook() {
        ChartLook now = looks.get();
        if (!now.equals(look)) {
            look = now;
            disposeSample();
        }
    }

    private void disposeSample() {
        if (sample != null) {
            sample.dispose();
            sample = null;
        }
    }

    @Override
    public Point computeSize(int widthHint, int heightHint, boolean changed) {
        GC gc = new GC(this);
        try {
            Point text = gc.textExtent(key.name());
            int width = 2 * PADDING_X + SAMPLE_WIDTH + GAP + text.x;
            int height = 2 * PADDING_Y + Math.max(SAMPLE_HEIGHT, text.y);
            return new Point(
                    widthHint == SWT.DEFAULT ? width : widthHint, heightHint == SWT.DEFAULT ? height : heightHint);
        } finally {
            gc.dispose();
        }
    }

    private void paint(GC gc) {
        takeLook();
        Rectangle area = getClientArea();
        gc.setBackground(SwtColours.of(look.background()));
        gc.fillRectangle(area);
        gc.setAntialias(SWT.ON);
        if (hovered) {
            gc.setBackground(SwtColours.of(look.minorGrid()));
            gc.fillRoundRectangle(0, 0, area.width, area.height, 6, 6);
        }
        if (isFocusControl()) {
            gc.setForeground(SwtColours.of(look.tone(0)));
            gc.drawRoundRectangle(0, 0, area.width - 1, area.height - 1, 6, 6);
        }
        if (sample == null) {
            ImageDataProvider provider = zoom -> key.sample(look, SAMPLE_WIDTH, SAMPLE_HEIGHT, zoom);
            sample = new Image(getDisplay(), provider);
        }
        gc.setAlpha(on() ? 255 : OFF_ALPHA);
        gc.drawImage(sample, PADDING_X, (area.height - SAMPLE_HEIGHT) / 2);
        gc.setAlpha(255);
        gc.setForeground(SwtColours.of(on() ? look.ink() : look.mutedInk()));
        Point text = gc.textExtent(key.name());
        int left = PADDING_X + SAMPLE_WIDTH + GAP;
        gc.drawText(key.name(), left, (area.height - text.y) / 2, true);
        if (!on()) {
            gc.drawLine(left, area.height / 2, left + text.x, area.height / 2);
        }
    }
}
