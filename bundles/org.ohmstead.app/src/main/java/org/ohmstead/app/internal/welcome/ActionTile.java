// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.welcome;

import java.util.function.ToIntFunction;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleControlAdapter;
import org.eclipse.swt.accessibility.AccessibleControlEvent;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.graphics.TextLayout;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** A large button with an icon, a title and a line that explains it. Works by mouse, Enter and Space, and is read out as a button. */
final class ActionTile extends Canvas {
    private static final int ICON = 32;
    private static final int USUAL_WIDTH = 300;
    private static final int ROUNDING = 10;
    private static final double TITLE_SIZE = 1.2;

    private final Image icon;
    private final String title;
    private final String explanation;
    private final boolean primary;
    private final Font titleFont;
    private boolean hovered;

    /**
     * Makes a tile.
     *
     * @param primary whether it is the one to choose in doubt
     * @param action what it does
     */
    ActionTile(Composite parent, String icon, String title, String explanation, boolean primary, Runnable action) {
        super(parent, SWT.DOUBLE_BUFFERED);
        this.icon = Pictures.icon(icon);
        this.title = title;
        this.explanation = explanation;
        this.primary = primary;
        FontDescriptor larger = FontDescriptor.createFrom(getFont())
                .setHeight((int) Math.round(getFont().getFontData()[0].getHeight() * TITLE_SIZE))
                .withStyle(SWT.BOLD);
        titleFont = new LocalResourceManager(JFaceResources.getResources(), this).create(larger);
        setCursor(getDisplay().getSystemCursor(SWT.CURSOR_HAND));
        addListener(SWT.Selection, event -> action.run());
        addListener(SWT.Paint, event -> paint(event.gc));
        addListener(SWT.MouseEnter, event -> hover(true));
        addListener(SWT.MouseExit, event -> hover(false));
        addListener(SWT.FocusIn, event -> redraw());
        addListener(SWT.FocusOut, event -> redraw());
        addListener(SWT.MouseUp, this::clicked);
        addListener(SWT.KeyDown, this::pressed);
        addListener(SWT.Traverse, event -> event.doit = event.detail != SWT.TRAVERSE_RETURN);
        addNames();
    }

    @Override
    public Point computeSize(int widthHint, int heightHint, boolean changed) {
        int width = widthHint == SWT.DEFAULT ? USUAL_WIDTH : widthHint;
        int words = Math.max(1, width - textStart() - Spacing.MARGIN);
        int height = layout(title, titleFont, words, layout -> layout.getBounds().height)
                + Spacing.TIGHT
                + layout(explanation, getFont(), words, layout -> layout.getBounds().height);
        return new Point(width, Math.max(height, ICON) + 2 * Spacing.MARGIN + Spacing.GAP);
    }

    private static int textStart() {
        return Spacing.MARGIN + ICON + Spacing.MARGIN;
    }

    private void paint(GC gc) {
        Rectangle area = getClientArea();
        Tones tones = Tones.of(getParent());
        gc.setAntialias(SWT.ON);
        gc.setBackground(getParent().getBackground());
        gc.fillRectangle(area);
        gc.setBackground(primary ? mixed(tones.accent(), tones.background(), hovered ? 0.26 : 0.16) : ground(tones));
        gc.fillRoundRectangle(1, 1, area.width - 2, area.height - 2, ROUNDING, ROUNDING);
        gc.setForeground(primary || hovered || isFocusControl() ? tones.accent() : tones.line());
        gc.setLineWidth(isFocusControl() ? 2 : 1);
        gc.drawRoundRectangle(1, 1, area.width - 3, area.height - 3, ROUNDING, ROUNDING);
        gc.drawImage(icon, Spacing.MARGIN, Spacing.MARGIN + Spacing.TIGHT, ICON, ICON);
        int words = Math.max(1, area.width - textStart() - Spacing.MARGIN);
        int top = Spacing.MARGIN + Spacing.TIGHT;
        gc.setForeground(tones.text());
        int titleHeight = layout(title, titleFont, words, layout -> {
            layout.draw(gc, textStart(), top);
            return layout.getBounds().height;
        });
        gc.setForeground(primary ? tones.text() : tones.mutedText());
        layout(explanation, getFont(), words, layout -> {
            layout.draw(gc, textStart(), top + titleHeight + Spacing.TIGHT);
            return 0;
        });
    }

    private Color ground(Tones tones) {
        return hovered
                ? mixed(tones.accent(), tones.background(), 0.08)
                : mixed(tones.text(), tones.background(), 0.03);
    }

    private static Color mixed(Color tone, Color ground, double share) {
        return new Color(
                (int) Math.round(tone.getRed() * share + ground.getRed() * (1 - share)),
                (int) Math.round(tone.getGreen() * share + ground.getGreen() * (1 - share)),
                (int) Math.round(tone.getBlue() * share + ground.getBlue() * (1 - share)));
    }

    private int layout(String words, Font font, int width, ToIntFunction<TextLayout> use) {
        TextLayout layout = new TextLayout(getDisplay());
        try {
            layout.setText(words);
            layout.setFont(font);
            layout.setWidth(width);
            return use.applyAsInt(layout);
        } finally {
            layout.dispose();
        }
    }

    private void hover(boolean now) {
        hovered = now;
        redraw();
    }

    private void clicked(Event event) {
        if (event.button == 1 && getClientArea().contains(event.x, event.y)) {
            notifyListeners(SWT.Selection, new Event());
        }
    }

    private void pressed(Event event) {
        if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR || event.keyCode == SWT.SPACE) {
            notifyListeners(SWT.Selection, new Event());
        }
    }

    private void addNames() {
        getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = title;
            }

            @Override
            public void getDescription(AccessibleEvent event) {
                event.result = explanation;
            }
        });
        getAccessible().addAccessibleControlListener(new AccessibleControlAdapter() {
            @Override
            public void getRole(AccessibleControlEvent event) {
                event.detail = ACC.ROLE_PUSHBUTTON;
            }
        });
    }
}
