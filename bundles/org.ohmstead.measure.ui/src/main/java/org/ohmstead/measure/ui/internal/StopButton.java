// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleControlAdapter;
import org.eclipse.swt.accessibility.AccessibleControlEvent;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Spacing;

/** The emergency stop: large, red, and pressed the moment that the mouse button or the key goes down. */
final class StopButton extends Canvas {
    private static final Messages TEXTS = Messages.of(StopButton.class);

    private static final Color RED = new Color(0xB8, 0x1F, 0x17);
    private static final Color PRESSED = new Color(0x7A, 0x10, 0x0B);
    private static final Color WHITE = new Color(0xFF, 0xFF, 0xFF);
    private static final int WIDTH = 250;
    private static final int CORNER = 10;

    private final String hint;
    private final Runnable press;
    private final Font large;
    private boolean down;

    /**
     * Makes the button.
     *
     * @param hint the keys that do the same, below the words
     */
    StopButton(Composite parent, String hint, Runnable press) {
        super(parent, SWT.DOUBLE_BUFFERED);
        this.hint = hint;
        this.press = press;
        large = new BigFonts(this).times(1.35, true);
        setToolTipText(TEXTS.text("stop.hint", hint));
        addListener(SWT.Paint, event -> paint(event.gc));
        addListener(SWT.MouseDown, event -> press());
        addListener(SWT.MouseUp, event -> show(false));
        addListener(SWT.KeyDown, this::key);
        addListener(SWT.KeyUp, event -> show(false));
        addListener(SWT.FocusIn, event -> redraw());
        addListener(SWT.FocusOut, event -> redraw());
        addListener(SWT.Traverse, event -> event.doit = true);
        getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = TEXTS.text("stop.name");
            }
        });
        getAccessible().addAccessibleControlListener(new AccessibleControlAdapter() {
            @Override
            public void getRole(AccessibleControlEvent event) {
                event.detail = ACC.ROLE_PUSHBUTTON;
            }
        });
    }

    private static String words() {
        return TEXTS.text("stop.words");
    }

    private void key(Event event) {
        if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR || event.character == ' ') {
            press();
        }
    }

    private void press() {
        show(true);
        press.run();
    }

    private void show(boolean nowDown) {
        if (down != nowDown && !isDisposed()) {
            down = nowDown;
            redraw();
        }
    }

    private void paint(GC gc) {
        Rectangle area = getClientArea();
        gc.setAntialias(SWT.ON);
        gc.setBackground(down ? PRESSED : RED);
        gc.fillRoundRectangle(0, 0, area.width, area.height, CORNER, CORNER);
        gc.setForeground(WHITE);
        if (isFocusControl()) {
            gc.setLineWidth(2);
            gc.drawRoundRectangle(3, 3, area.width - 6, area.height - 6, CORNER, CORNER);
        }
        Font small = gc.getFont();
        gc.setFont(large);
        Point size = gc.textExtent(words());
        gc.setFont(small);
        Point below = gc.textExtent(hint);
        int top = (area.height - size.y - below.y) / 2;
        gc.setFont(large);
        gc.drawText(words(), (area.width - size.x) / 2, top, true);
        gc.setFont(small);
        gc.drawText(hint, (area.width - below.x) / 2, top + size.y, true);
    }

    @Override
    public Point computeSize(int widthHint, int heightHint, boolean changed) {
        GC gc = new GC(this);
        try {
            int line = gc.getFontMetrics().getHeight();
            int below = gc.textExtent(hint).x;
            gc.setFont(large);
            int words = Math.max(gc.textExtent(words()).x, below);
            int height = line + gc.getFontMetrics().getHeight() + 2 * Spacing.TIGHT;
            return new Point(Math.max(WIDTH, words + 4 * Spacing.GAP), height);
        } finally {
            gc.dispose();
        }
    }
}
